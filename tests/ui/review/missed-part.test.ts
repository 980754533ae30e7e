import { describe, expect, test } from 'vitest';
import type { Attempt } from '#engine/marking/attempt.ts';
import { review } from '#engine/marking/review.ts';
import { missedPart } from '#ui/review/missed-part.ts';
import { shippedSequence } from '../shipped-content.ts';

const sequence = shippedSequence('base-of-wall');
const ids = sequence.steps.map(({ id }) => id as string);

const partOf = (cards: readonly string[]) => {
  const attempt = {
    sequence,
    played: cards.map((card) => ({ card, settings: new Map(), minute: undefined })),
  } as unknown as Attempt;
  return missedPart(sequence, review(attempt).items);
};

describe('truth', () => {
  test('nothing missed leaves nothing to practise', () => {
    expect(partOf(ids)).toBeUndefined();
  });

  test('a step left out is practised with the steps around it', () => {
    expect(partOf(ids.filter((_, at) => at !== 8))).toEqual([ids[7], ids[9]]);
  });

  test('the first step left out is practised from the first', () => {
    expect(partOf(ids.slice(1))).toEqual([ids[0], ids[1]]);
  });

  test('a decoy alone is no stretch of the work', () => {
    const decoy = sequence.method.decoys[0]!.id;
    expect(partOf([decoy, ...ids])).toBeUndefined();
  });

  test('when everything was missed, the whole wall is the practice', () => {
    expect(partOf([])).toBeUndefined();
  });
});
