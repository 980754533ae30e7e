import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { afterHelp, type Help, helpCost } from '#engine/marking/guidance.ts';
import type { Attempt } from '#engine/marking/attempt.ts';
import { review } from '#engine/marking/review.ts';
import { scoreLines } from '#ui/review/score-lines.ts';
import { tinySequence } from '../tiny-content.ts';

const sequence = tinySequence({ edge: 'drip' });
const reviewOf = (cards: readonly string[]) =>
  review({
    sequence,
    played: cards.map((card) => ({ card, settings: new Map(), minute: undefined })),
  } as unknown as Attempt);

describe('truth', () => {
  test('nothing wrong and no help has no line', () => {
    const marked = reviewOf(['prime', 'set-edge', 'hang']);
    expect(scoreLines({ review: marked, score: 100 }, [])).toEqual([]);
  });

  test('help of a kind is one line, and what it would cost beyond 0 is put back', () => {
    const marked = reviewOf(['prime', 'set-edge', 'hang']);
    const help = Array<Help>(60).fill('step');
    expect(scoreLines({ review: marked, score: 0 }, help)).toEqual([
      { kind: 'help', help: 'step', count: 60, points: 120 },
      { kind: 'floor', points: 20 },
    ]);
  });
});

describe('laws', () => {
  it('the lines add up to the score, whatever was built and however much help it took', () => {
    const cards = fc.shuffledSubarray(['prime', 'set-edge', 'hang', 'heat']);
    const helps = fc.array(fc.constantFrom(...(Object.keys(helpCost) as Help[])), {
      maxLength: 120,
    });
    fc.assert(
      fc.property(cards, helps, (played, help) => {
        const marked = reviewOf(played);
        const score = afterHelp(marked.score, help);
        const sum = scoreLines({ review: marked, score }, help).reduce(
          (total, { kind, points }) => total + (kind === 'floor' ? points : -points),
          100,
        );
        expect(sum).toBeCloseTo(score, 9);
      }),
    );
  });
});
