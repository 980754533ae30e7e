import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Attempt } from '#engine/marking/attempt.ts';
import { review } from '#engine/marking/review.ts';
import { sideBySide } from '#engine/marking/side-by-side.ts';
import { walls } from '../../content/walls.ts';

const { sequence } = walls[0]!;
const ids = sequence.steps.map(({ id }) => id);
const decoys = sequence.strays.flatMap((s) => (s.kind === 'decoy' ? [s.decoy.id] : []));

const attemptOf = (cards: readonly string[]): Attempt => ({
  sequence,
  played: cards.map((card) => ({
    card: card as (typeof ids)[number],
    settings: new Map(),
    minute: undefined,
  })),
});

const rowsOf = (cards: readonly string[]) => {
  const attempt = attemptOf(cards);
  return sideBySide(attempt, review(attempt));
};

describe('truth', () => {
  test('a correct order stands beside itself', () => {
    expect(rowsOf(ids)).toEqual(
      ids.map((id, at) => ({
        played: { card: id, at, fate: 'stands' },
        right: { step: id, fate: 'stands' },
      })),
    );
  });

  test('a card left out stands on the right alone', () => {
    const rows = rowsOf(ids.filter((_, at) => at !== 5));
    expect(rows.filter(({ played }) => !played)).toEqual([
      { played: undefined, right: { step: ids[5], fate: 'added' } },
    ]);
  });

  test('a decoy and a card done again stand on the left alone', () => {
    const rows = rowsOf([...ids.slice(0, 3), decoys[0]!, ids[0]!, ...ids.slice(3)]);
    expect(rows.filter(({ right }) => !right).map(({ played }) => played?.fate)).toEqual([
      'stray',
      'again',
    ]);
  });
});

describe('laws', () => {
  it('each card stands once on the left as played, and each step once on the right', () => {
    const cards = fc.shuffledSubarray([...ids, ...decoys]);
    fc.assert(
      fc.property(cards, (played) => {
        const attempt = attemptOf(played);
        const marked = review(attempt);
        const rows = sideBySide(attempt, marked);
        expect(rows.flatMap((row) => row.played?.card ?? [])).toEqual(played);
        expect(rows.flatMap(({ right }) => right?.step ?? [])).toEqual(marked.nearestOrder);
        for (const { played: left, right } of rows) {
          if (left && right) expect(left.card).toBe(right.step);
        }
        const moved = rows.filter((row) => row.played?.fate === 'moved').length;
        expect(rows.filter(({ right }) => right?.fate === 'moved').length).toBe(moved);
      }),
      { numRuns: 50 },
    );
  });
});
