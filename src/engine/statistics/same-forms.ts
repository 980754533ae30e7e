/**
 * Sorts people by what they were asked: those with the same questions sat the same form, in whatever
 * order. Only among them do totals compare as they are, and only of them can KR-20 be told. O(persons x
 * items).
 */
import type { Responses } from './responses.ts';

export type SameForm = {
  /** Rows of the responses. */
  readonly persons: readonly number[];
  /** Of these persons and these items alone. */
  readonly responses: Responses;
};

/**
 * `asked`: of each person the columns, in ascending order, also those that were left open. The form that
 * most people sat comes first. Throws a RangeError unless each person has a list.
 */
export function sameForms(
  { persons, items, scores }: Responses,
  asked: readonly (readonly number[])[],
): readonly SameForm[] {
  if (asked.length !== persons) {
    throw new RangeError(`There are ${persons} persons, and ${asked.length} lists of questions.`);
  }
  const groups = Map.groupBy(asked.keys(), (person) => asked[person]!.join(' '));
  return [...groups.values()]
    .map((own) => {
      const columns = asked[own[0]!]!;
      const kept = own.flatMap((person) => columns.map((item) => scores[person * items + item]!));
      return {
        persons: own,
        responses: { persons: own.length, items: columns.length, scores: Uint8Array.from(kept) },
      };
    })
    .toSorted((a, b) => b.persons.length - a.persons.length);
}
