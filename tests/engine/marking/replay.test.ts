import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Attempt } from '#engine/marking/attempt.ts';
import { framesOf, isApart } from '#engine/marking/replay.ts';
import { review } from '#engine/marking/review.ts';
import { sideBySide } from '#engine/marking/side-by-side.ts';
import { walls } from '../../content/walls.ts';

const { sequence } = walls[0]!;
const ids = sequence.steps.map(({ id }) => id as string);

const framesFor = (cards: readonly string[]) => {
  const attempt = {
    sequence,
    played: cards.map((card) => ({ card, settings: new Map(), minute: undefined })),
  } as unknown as Attempt;
  return framesOf(sideBySide(attempt, review(attempt)));
};

describe('truth', () => {
  it('a right wall goes up on both sides at once', () => {
    const frames = framesFor(ids);
    expect(frames.map(({ played, right }) => [played, right])).toEqual(
      [...Array(ids.length + 1).keys()].map((n) => [n, n]),
    );
    expect(frames.some(isApart)).toBe(false);
  });

  it('the sides part where a step was left out, and nowhere else', () => {
    const frames = framesFor(ids.toSpliced(4, 1));
    expect(frames.flatMap((frame, at) => (isApart(frame) ? [at] : []))).toEqual([5]);
    expect(frames[5]).toMatchObject({ played: 4, right: 5 });
  });
});

describe('laws', () => {
  it('begins with nothing, ends with everything, and puts one card up at a time', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(ids), (cards) => {
        const frames = framesFor(cards);
        expect(frames[0]).toMatchObject({ played: 0, right: 0 });
        expect(frames.at(-1)).toMatchObject({ played: cards.length, right: ids.length });
        frames.slice(1).forEach((frame, index) => {
          const before = frames[index]!;
          const [left, right] = [frame.played - before.played, frame.right - before.right];
          expect(Math.max(left, right)).toBe(1);
          expect(Math.min(left, right)).toBeGreaterThanOrEqual(0);
        });
      }),
      { numRuns: 60 },
    );
  });
});
