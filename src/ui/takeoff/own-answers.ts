import type { PartId } from '#engine/takeoff/family.ts';
import type { Amount } from '#engine/takeoff/instance.ts';
import type { PartAnswer } from './part-answer.svelte.ts';

/** What a person answered to some parts, right or wrong, for the parts that build on them. */
export const ownAnswers = (
  parts: readonly Pick<PartAnswer, 'solved' | 'value'>[],
): ReadonlyMap<PartId, Amount> =>
  new Map(
    parts.flatMap(({ solved, value }) => (value === undefined ? [] : [[solved.part.id, value]])),
  );
