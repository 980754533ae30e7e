import { render, screen } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import type { Attempt } from '#engine/marking/attempt.ts';
import { review } from '#engine/marking/review.ts';
import Orders from '#ui/review/Orders.svelte';
import { shippedSequence } from '../shipped-content.ts';

const sequence = shippedSequence('base-of-wall');
const ids = sequence.steps.map(({ id }) => id as string);
const says = new Map<string, string>(
  [...sequence.method.steps, ...sequence.method.decoys].map(({ id, say }) => [id, say.en]),
);

function show(cards: readonly string[]) {
  const attempt = {
    sequence,
    played: cards.map((card) => ({ card, settings: new Map(), minute: undefined })),
  } as unknown as Attempt;
  const found = review(attempt);
  render(Orders, { marked: { attempt, review: found, score: found.score } });
  const part = screen.getByRole('region', { name: 'Your order and the nearest right one' });
  const column = (side: string) =>
    [...part.querySelectorAll<HTMLElement>(`li .${side}`)].map((cell) => ({
      number: cell.querySelector('.number')!.textContent,
      card: cell.querySelector('.card')!.textContent,
      note: cell.querySelector('.note')?.textContent,
    }));
  const rows = [...part.querySelectorAll('li')];
  return { found, part, rows, yours: column('left'), nearest: column('right') };
}

type Cell = { readonly number: string; readonly card: string; readonly note: string | undefined };

const plain = (cards: readonly string[]): readonly Cell[] =>
  cards.map((card, at) => ({ number: String(at + 1), card: says.get(card)!, note: undefined }));

/** The bar screwed on before there is anything to hold: it alone has to move. */
const barEarly = (() => {
  const rest = ids.filter((id) => id !== 'fasten-bar');
  return rest.toSpliced(rest.indexOf('hang-sheet'), 0, 'fasten-bar');
})();

describe('truth', () => {
  test('a right order stands the same on both sides, row by row', () => {
    const { rows, yours, nearest } = show(ids);
    expect(yours).toEqual(plain(ids));
    expect(nearest).toEqual(plain(ids));
    expect(rows).toHaveLength(ids.length);
    for (const row of rows) expect(row.querySelectorAll('.stands')).toHaveLength(2);
  });

  test('a step too early is marked where it was put, and where it belongs', () => {
    const { found, part, rows, yours, nearest } = show(barEarly);
    const order = found.nearestOrder as readonly string[];
    const [from, to] = [barEarly.indexOf('fasten-bar'), order.indexOf('fasten-bar')];
    expect(to).toBeGreaterThan(from);
    expect(yours).toEqual(
      plain(barEarly).with(from, {
        ...plain(barEarly)[from]!,
        note: `Belongs at ${to + 1}`,
      }),
    );
    expect(nearest).toEqual(plain(order).with(to, { ...plain(order)[to]!, note: 'Put it here' }));
    expect(part.querySelectorAll('.moved')).toHaveLength(2);
    // It shares no row with another card; all the others share theirs.
    expect(rows).toHaveLength(ids.length + 1);
    for (const row of rows) expect(row.children).toHaveLength(row.querySelector('.moved') ? 1 : 2);
    expect(part.querySelectorAll('svg circle')).toHaveLength(1);
  });

  test('what was left out, does not belong or was done again is told on its own side', () => {
    const decoy = sequence.method.decoys[0]!.id as string;
    const cards = [decoy, ...ids.filter((id) => id !== 'lay-mastic'), ids[0]!];
    const { yours, nearest } = show(cards);
    expect(yours[0]).toMatchObject({ card: says.get(decoy), note: 'Not on this wall' });
    expect(yours.at(-1)).toMatchObject({ card: says.get(ids[0]!), note: 'Done again' });
    expect(yours).toHaveLength(cards.length);
    expect(nearest.filter(({ note }) => note !== undefined)).toEqual([
      expect.objectContaining({ card: says.get('lay-mastic'), note: 'Was left out' }),
    ]);
  });
});
