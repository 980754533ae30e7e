import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, test } from 'vitest';
import { fromText, toText } from '#engine/compile/transport.ts';
import type { WallAnswer } from '#engine/marking/moves.ts';
import { shownWall } from '#server/exams/shown-wall.ts';
import { drawMockUp } from '#server/exams/mock-up-part.ts';
import type { ShownWall } from '#ui/exam/shown-wall.ts';
import ExamWall from '#ui/exam/ExamWall.svelte';
import { openContent } from '#server/content.ts';

const content = openContent();

/** As it comes from the server. */
function asked(given?: WallAnswer): ShownWall {
  const scheme = [...content.schemes.values()].find(({ id }) => id === 'base-of-wall-installer')!;
  const part = scheme.parts.find(({ kind }) => kind === 'mock-up');
  if (part?.kind !== 'mock-up') throw new Error('no such part');
  const drawn = drawMockUp(content, { scheme, part, retired: new Set(), seed: 'one' });
  if (!drawn.ok) throw new Error('not drawn');
  const plan = { ...drawn.value, seed: 'one', allowed: 1, grace: 1 };
  const shown = shownWall(content, plan, plan.items[0]!, given && JSON.stringify(given));
  if (!shown) throw new Error('not shown');
  return fromText(toText(shown)) as ShownWall;
}

function built(given?: WallAnswer) {
  const told: WallAnswer[] = [];
  const wall = asked(given);
  render(ExamWall, { wall, given, onmove: (answer: WallAnswer) => told.push(answer) });
  return { told, wall };
}

const plainCard = (wall: ShownWall) => wall.cards.find(({ asks }) => asks.length === 0)!;

describe('a wall of an examination', () => {
  test('tells the whole wall at every move, and takes the last one back', async () => {
    const { told, wall } = built();
    const card = plainCard(wall);
    await userEvent.click(screen.getByRole('radio', { name: card.say.en }));
    await userEvent.click(screen.getByRole('button', { name: 'Put it up' }));
    const up = { card: card.id, settings: {} };
    expect(told).toEqual([{ kind: 'wall', moves: [up] }]);
    expect(screen.queryByRole('radio', { name: card.say.en })).toBeNull();
    await userEvent.click(screen.getByRole('button', { name: 'Wait 5 min' }));
    expect(told.at(-1)).toEqual({ kind: 'wall', moves: [up, { wait: 5 }] });
    await userEvent.click(screen.getByRole('button', { name: 'Undo' }));
    await userEvent.click(screen.getByRole('button', { name: 'Undo' }));
    expect(told.at(-1)).toEqual({ kind: 'wall', moves: [] });
    expect(screen.getByRole('radio', { name: card.say.en })).toBeTruthy();
  });

  test('a card with settings goes up once each is set or left on purpose', async () => {
    const { told, wall } = built();
    const card = wall.cards.find(({ asks }) => asks.length === 1)!;
    await userEvent.click(screen.getByRole('radio', { name: card.say.en }));
    await userEvent.click(screen.getByRole('button', { name: 'Put it up' }));
    expect(told).toEqual([]);
    await userEvent.click(screen.getByRole('button', { name: /^Leave it at/ }));
    await userEvent.click(screen.getByRole('button', { name: 'Put it up' }));
    expect(told[0]?.moves).toMatchObject([{ card: card.id }]);
    expect(Object.keys((told[0]!.moves[0] as { settings: object }).settings)).toEqual([
      card.asks[0]!.id,
    ]);
  });

  test('a touch tells nothing of a wall that the server has not seen yet', async () => {
    const told: WallAnswer[] = [];
    const onmove = (answer: WallAnswer) => told.push(answer);
    const given: WallAnswer = { kind: 'wall', moves: [{ wait: 60 }] };
    const page = render(ExamWall, { wall: asked(given), given, onmove });
    const touch = screen.getByRole('button', { name: 'Touch it' });
    const clock = screen.getByRole('region', { name: /^Clock/ });
    await userEvent.click(touch);
    const felt = within(clock).getByRole('status').textContent;
    expect(felt).not.toContain('once your last move is saved');
    await userEvent.click(screen.getByRole('button', { name: 'Wait 5 min' }));
    expect(within(clock).getByRole('status').textContent.trim()).toBe('');
    await userEvent.click(touch);
    expect(within(clock).getByRole('status').textContent).toContain('once your last move is saved');
    await page.rerender({ wall: asked(told.at(-1)), given: told.at(-1), onmove });
    expect(within(clock).getByRole('status').textContent).toBe(felt);
  });

  test('goes on with what was saved, and has no hint and no verdict', () => {
    const card = plainCard(asked());
    const { wall } = built({
      kind: 'wall',
      moves: [{ wait: 60 }, { card: card.id, settings: {} }],
    });
    const standing = screen.getByRole('region', { name: /On the wall/ });
    expect(within(standing).getAllByRole('listitem').length).toBe(1);
    expect(screen.getAllByRole('radio').length).toBe(wall.cards.length - 1);
    expect(screen.queryByRole('button', { name: /hint/i })).toBeNull();
  });
});
