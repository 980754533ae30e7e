import type { Quantity } from '#engine/measure/quantity.ts';
import { rational, type Rational } from '#engine/measure/rational.ts';
import type { HandsOnResult } from './hands-on-result.ts';
import type { Judged } from './judged-points.ts';

export type JudgedByTwo = {
  /** Points that both saw: what the first and what the second said. */
  readonly pairs: readonly (readonly [first: boolean, second: boolean])[];
  /**
   * The same counted, as kappa is reckoned from: rows are the first examiner's right and wrong, columns
   * the second's.
   */
  readonly counts: readonly [readonly [number, number], readonly [number, number]];
  /** Share of the pairs that are alike; nothing where no point was seen by both. */
  readonly agreement: Rational | undefined;
};

/** Two examiners' judgements of the same points, each made without the other's. */
export function judgedByTwo(first: readonly Judged[], second: readonly Judged[]): JudgedByTwo {
  const others = new Map(second.map(({ point, right }) => [point.id, right]));
  const pairs = first.flatMap(({ point, right }) => {
    const other = others.get(point.id);
    return right === undefined || other === undefined ? [] : [[right, other] as const];
  });
  const count = (a: boolean, b: boolean): number =>
    pairs.filter(([one, other]) => one === a && other === b).length;
  const counts = [
    [count(true, true), count(true, false)],
    [count(false, true), count(false, false)],
  ] as const;
  const alike = counts[0][0] + counts[1][1];
  const agreement = pairs.length > 0 ? rational(alike, pairs.length) : undefined;
  return { pairs, counts, agreement };
}

/**
 * The check of two examiners. Where they part ways, on the outcome or on too many points, neither is
 * overruled here: a third examiner watches the candidate again.
 */
export function jointOutcome(
  first: HandsOnResult,
  second: HandsOnResult,
  { agreement }: JudgedByTwo,
  asked: Quantity<'ratio'>,
): HandsOnResult['outcome'] | 'to-be-settled' {
  if (first.outcome === 'open' || second.outcome === 'open') return 'open';
  const isAgreed = agreement?.gte(asked.value) ?? false;
  return isAgreed && first.outcome === second.outcome ? first.outcome : 'to-be-settled';
}
