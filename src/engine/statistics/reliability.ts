/**
 * How far a test's totals would come out the same with other items of its kind: KR-20 (G. F. Kuder, M.
 * W. Richardson, "The theory of the estimation of test reliability", Psychometrika 2, 1937), which for
 * items of 0 and 1 is Cronbach's alpha. Items and totals take the same variance, over persons: p (1 -
 * p) mixed with a total's variance over persons - 1 comes out too high. Sums are of whole numbers,
 * exact. O(persons x items).
 */
import { fault, ok, type Result } from '#engine/result.ts';
import { answeredAll, type Responses } from './responses.ts';

export type Reliability = {
  /** Those who answered every item; nobody else counts. */
  readonly persons: number;
  /** At most 1; below 0 where items go against each other. */
  readonly kr20: number;
  /** What it would be without each item; undefined of two items, or where the others do not vary. */
  readonly without: readonly (number | undefined)[];
  /** In right answers: the sd of totals over persons - 1, times the root of 1 - KR-20. */
  readonly errorOfMeasurement: number;
};

export type ReliabilityFault = {
  readonly code: 'TOO_FEW_ITEMS' | 'TOO_FEW_PERSONS' | 'TOTALS_ALIKE';
  readonly message: string;
};

export function reliability(responses: Responses): Result<Reliability, ReliabilityFault> {
  const { persons, items, scores } = answeredAll(responses);
  if (items < 2) return refusal('TOO_FEW_ITEMS', 'It takes two items or more.');
  if (persons < 2) return refusal('TOO_FEW_PERSONS', 'It takes two persons who answered all.');
  const rights = new Float64Array(items);
  const withTotals = new Float64Array(items);
  let [sum, squares] = [0, 0];
  for (let person = 0; person < persons; person += 1) {
    const row = scores.subarray(person * items, (person + 1) * items);
    const total = row.reduce((so, score) => so + score, 0);
    sum += total;
    squares += total * total;
    for (let item = 0; item < items; item += 1) {
      rights[item]! += row[item]!;
      withTotals[item]! += row[item]! * total;
    }
  }
  // Each times persons squared, so that they stay whole.
  const ofTotals = persons * squares - sum * sum;
  if (ofTotals === 0) return refusal('TOTALS_ALIKE', 'All have as many right.');
  const ofItems = rights.map((right) => right * (persons - right));
  const all = ofItems.reduce((so, one) => so + one, 0);
  const kr20 = coefficient(items, all, ofTotals);
  return ok({
    persons,
    kr20,
    without: [...ofItems].map((own, item) => {
      const shared = persons * withTotals[item]! - rights[item]! * sum;
      const ofRest = ofTotals - 2 * shared + own;
      return items < 3 || ofRest === 0 ? undefined : coefficient(items - 1, all - own, ofRest);
    }),
    errorOfMeasurement: Math.sqrt((ofTotals / (persons * (persons - 1))) * (1 - kr20)),
  });
}

const coefficient = (items: number, ofItems: number, ofTotals: number): number =>
  (items / (items - 1)) * (1 - ofItems / ofTotals);

const refusal = (code: ReliabilityFault['code'], message: string) => fault({ code, message });
