import { answeredAll, type Responses } from './responses.ts';

/** How the numbers of right answers are spread, of those persons who answered every item. */
export type Totals = {
  readonly persons: number;
  readonly mean: number;
  /** Over persons - 1: what is told of all from some. Undefined for fewer than two. */
  readonly sd: number | undefined;
  /** How many persons have each number right, from 0 to the number of items. */
  readonly counts: readonly number[];
};

/** Undefined where nobody answered everything. Sums are of whole numbers, exact. O(persons x items). */
export function totals(responses: Responses): Totals | undefined {
  const { persons, items, scores } = answeredAll(responses);
  if (persons === 0) return undefined;
  const counts = Array.from({ length: items + 1 }, () => 0);
  for (let person = 0; person < persons; person += 1) {
    let total = 0;
    for (let at = person * items; at < (person + 1) * items; at += 1) total += scores[at]!;
    counts[total]! += 1;
  }
  const sum = counts.reduce((so, count, total) => so + count * total, 0);
  const squares = counts.reduce((so, count, total) => so + count * total * total, 0);
  const spread = persons * squares - sum * sum;
  return {
    persons,
    mean: sum / persons,
    sd: persons < 2 ? undefined : Math.sqrt(spread / (persons * (persons - 1))),
    counts,
  };
}
