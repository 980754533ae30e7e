/**
 * The same comparison of groups where everybody had a form of their own: for each item those to whom it
 * was put, sorted by how many of their form they got right, this item among them. Only forms of the most
 * common length are compared, since their numbers right mean the same as far as forms are equally hard
 * (`drawForm` draws them so). Who left the item open is not compared on it. O(persons x items).
 */
import type { Group } from './group-strata.ts';
import type { Stratum } from './mantel-haenszel.ts';
import { absent, type Responses } from './responses.ts';

/**
 * By item, then by number of right answers. `lengths`: how many items each person's form had. Throws a
 * RangeError unless each person has a length and a group, or none of the two groups.
 */
export function formStrata(
  { persons, items, scores }: Responses,
  groups: readonly (Group | undefined)[],
  lengths: readonly number[],
): readonly (readonly Stratum[])[] {
  if (groups.length !== persons || lengths.length !== persons) {
    throw new RangeError(
      `There are ${persons} persons, and others in number of groups or lengths.`,
    );
  }
  const length = commonest(lengths);
  const counts = new Float64Array(items * (length + 1) * 4);
  for (let person = 0; person < persons; person += 1) {
    const group = groups[person];
    if (group === undefined || lengths[person] !== length) continue;
    const row = scores.subarray(person * items, (person + 1) * items);
    const total = row.reduce((sum, score) => sum + (score === 1 ? 1 : 0), 0);
    const side = group === 'reference' ? 0 : 2;
    row.forEach((score, item) => {
      if (score === absent) return;
      counts[(item * (length + 1) + total) * 4 + side + (score === 1 ? 0 : 1)]! += 1;
    });
  }
  return Array.from({ length: items }, (_, item) =>
    Array.from({ length: length + 1 }, (__, total) => {
      const at = (item * (length + 1) + total) * 4;
      return {
        referenceRight: counts[at]!,
        referenceWrong: counts[at + 1]!,
        focalRight: counts[at + 2]!,
        focalWrong: counts[at + 3]!,
      };
    }),
  );
}

/** The longest of those that are as common. */
export function commonest(lengths: readonly number[]): number {
  const counts = Map.groupBy(lengths, (length) => length);
  return [...counts].reduce(
    (best, [length, { length: often }]) =>
      often > best.often || (often === best.often && length > best.length)
        ? { length, often }
        : best,
    { length: 0, often: 0 },
  ).length;
}

/** How many of each group are compared. */
export const personsIn = (strata: readonly Stratum[]): Readonly<Record<Group, number>> => ({
  reference: strata.reduce((sum, one) => sum + one.referenceRight + one.referenceWrong, 0),
  focal: strata.reduce((sum, one) => sum + one.focalRight + one.focalWrong, 0),
});
