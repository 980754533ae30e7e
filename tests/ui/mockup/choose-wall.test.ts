import { render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, test } from 'vitest';
import { anyWall, anyWallAddress } from '#ui/mockup/fresh-wall.ts';
import ChooseWall from '#ui/mockup/ChooseWall.svelte';
import { addressOf, wallFrom } from '#ui/mockup/wall-address.ts';
import { shippedBundle, shippedMethods } from '../shipped-content.ts';

const methods = shippedMethods.map((id) => {
  const { method } = shippedBundle(id);
  return { ...method, steps: method.steps.length };
});

const anyWallLink = () => screen.getByRole<HTMLAnchorElement>('link', { name: 'Any wall' });
const read = (id: string, href: string) => {
  const wall = wallFrom(shippedBundle(id).method, new URL(href, 'http://site').searchParams);
  if (!wall.ok) throw new Error(JSON.stringify(wall.error));
  return wall.value;
};

describe('truth', () => {
  test.each(methods)('any wall of $id has all of it in its address', async ({ id, title }) => {
    render(ChooseWall, { methods });
    await userEvent.click(screen.getByRole('radio', { name: title.en }));
    const href = anyWallLink().getAttribute('href')!;
    const wall = read(id, href);
    expect(href).toMatch(new RegExp(`^/practise/${id}[?]`));
    expect(Object.keys(wall.site)).toEqual(
      methods.find((one) => one.id === id)!.site.map((q) => q.id),
    );
    for (const question of Object.keys(wall.site)) expect(href).toContain(`${question}=`);
    // Whoever opens it again, or asks for any wall of its seed, gets the same.
    expect(addressOf(wall)).toBe(href);
    expect(anyWall(shippedBundle(id).method, wall.mode, wall.seed)).toEqual(wall);
  });

  test('any wall is built in the way that was chosen', async () => {
    render(ChooseWall, { methods });
    const id = methods[0]!.id;
    const guided = read(id, anyWallLink().getAttribute('href')!);
    expect(guided.mode).toBe('guided');
    await userEvent.click(screen.getByRole('radio', { name: /^On your own/ }));
    const own = read(id, anyWallLink().getAttribute('href')!);
    expect(own).toEqual({ ...guided, mode: 'own' });
  });
});

describe('laws', () => {
  it.each(shippedMethods)('seeds lead to every answer of every question: %s', (id) => {
    const { method } = shippedBundle(id);
    const walls = Array.from({ length: 200 }, (_, seed) =>
      read(id, anyWallAddress(method, 'own', String(seed))),
    );
    for (const { id: question, values } of method.site) {
      const found = new Set(walls.map(({ site }) => site[question]));
      expect(found).toEqual(new Set(values.map((value) => value.id)));
    }
  });
});
