import { answeredAll, type Responses } from './responses.ts';
import type { Stratum } from './mantel-haenszel.ts';

/** Two groups of persons, by person. */
export type Group = 'reference' | 'focal';

export type GroupStrata = {
  /** Who answered every item; nobody else is compared. */
  readonly persons: Readonly<Record<Group, number>>;
  /** By item, then by number of right answers from 0 to all. */
  readonly strata: readonly (readonly Stratum[])[];
};

/**
 * Persons sorted by their number of right answers, this item's among them (P. W. Holland, D. T. Thayer
 * 1988, from memory: leaving it out would show differences where there are none). Throws a RangeError
 * unless each person has a group. O(persons x items).
 */
export function groupStrata(responses: Responses, groups: readonly Group[]): GroupStrata {
  if (groups.length !== responses.persons) {
    throw new RangeError(`There are ${responses.persons} persons and ${groups.length} groups.`);
  }
  const whole = ofGroup(responses, groups);
  const { items } = responses;
  const counts = new Float64Array(items * (items + 1) * 4);
  for (const [place, { persons, scores }] of [whole.reference, whole.focal].entries()) {
    for (let person = 0; person < persons; person += 1) {
      const row = scores.subarray(person * items, (person + 1) * items);
      const total = row.reduce((sum, score) => sum + score, 0);
      for (let item = 0; item < items; item += 1) {
        counts[(item * (items + 1) + total) * 4 + place * 2 + (row[item] === 1 ? 0 : 1)]! += 1;
      }
    }
  }
  return {
    persons: { reference: whole.reference.persons, focal: whole.focal.persons },
    strata: Array.from({ length: items }, (_, item) =>
      Array.from({ length: items + 1 }, (_, total) => {
        const at = (item * (items + 1) + total) * 4;
        return {
          referenceRight: counts[at]!,
          referenceWrong: counts[at + 1]!,
          focalRight: counts[at + 2]!,
          focalWrong: counts[at + 3]!,
        };
      }),
    ),
  };
}

function ofGroup(
  { items, scores }: Responses,
  groups: readonly Group[],
): Readonly<Record<Group, Responses>> {
  const of = (wanted: Group): Responses => {
    const who = [...groups.keys()].filter((person) => groups[person] === wanted);
    const own = new Uint8Array(who.length * items);
    for (const [at, person] of who.entries()) {
      own.set(scores.subarray(person * items, (person + 1) * items), at * items);
    }
    return answeredAll({ persons: who.length, items, scores: own });
  };
  return { reference: of('reference'), focal: of('focal') };
}
