/**
 * How hard each item is, and whether those who do well on the others also get it right. The
 * point-biserial correlation is Pearson's, of an item's 0 and 1 with how well the person did; the
 * corrected one leaves the item itself out of that, as it would agree with itself (F. M. Lord, M. R.
 * Novick, "Statistical theories of mental test scores", 1968, ch. 15, from memory). How well somebody
 * did is the share right of what that person answered: with every item answered, the same correlations
 * as with totals. O(persons x items).
 */
import { absent, type Responses } from './responses.ts';

export type ItemFigures = {
  readonly answers: number;
  readonly right: number;
  /** Share right of those who answered; undefined where nobody did. */
  readonly proportion: number | undefined;
  /** From -1 to 1; undefined where all did alike on the item, or all alike on what it is held against. */
  readonly pointBiserial: number | undefined;
  readonly corrected: number | undefined;
};

/** One for each item, in order. Who answered one item only says nothing of the corrected figure. */
export function itemFigures(responses: Responses): readonly ItemFigures[] {
  const { persons, items, scores } = responses;
  const answered = new Uint32Array(persons);
  const rights = new Uint32Array(persons);
  for (let person = 0; person < persons; person += 1) {
    for (let item = 0; item < items; item += 1) {
      const score = scores[person * items + item]!;
      if (score === absent) continue;
      answered[person]! += 1;
      rights[person]! += score;
    }
  }
  const share = (person: number): number => rights[person]! / answered[person]!;
  return Array.from({ length: items }, (_, item) => {
    const scoreOf = (person: number): number => scores[person * items + item]!;
    const shareOfRest = (person: number): number =>
      (rights[person]! - scoreOf(person)) / (answered[person]! - 1);
    const who = [...answered.keys()].filter((person) => scoreOf(person) !== absent);
    const right = who.reduce((sum, person) => sum + scoreOf(person), 0);
    const others = who.filter((person) => answered[person]! > 1);
    return {
      answers: who.length,
      right,
      proportion: who.length === 0 ? undefined : right / who.length,
      pointBiserial: correlation(who, scoreOf, share),
      corrected: correlation(others, scoreOf, shareOfRest),
    };
  });
}

/** Pearson's, in two passes; undefined where either side does not vary. */
function correlation(
  who: readonly number[],
  one: (person: number) => number,
  other: (person: number) => number,
): number | undefined {
  const [first] = who;
  if (first === undefined) return undefined;
  let [sumX, sumY] = [0, 0];
  let [variesX, variesY] = [false, false];
  for (const person of who) {
    sumX += one(person);
    sumY += other(person);
    variesX ||= one(person) !== one(first);
    variesY ||= other(person) !== other(first);
  }
  if (!variesX || !variesY) return undefined;
  const [meanX, meanY] = [sumX / who.length, sumY / who.length];
  let [xx, yy, xy] = [0, 0, 0];
  for (const person of who) {
    const [x, y] = [one(person) - meanX, other(person) - meanY];
    xx += x * x;
    yy += y * y;
    xy += x * y;
  }
  return Math.max(-1, Math.min(1, xy / Math.sqrt(xx * yy)));
}
