/**
 * The result of a part from the marks of its items. All of it is exact: sums add up to the last
 * fraction, and a share of just the pass mark passes. Items that were retired since the form was drawn
 * count for nobody: their marks are shown and left out, and the share is of what remains.
 */
import type { Quantity } from '#engine/measure/quantity.ts';
import { zero, type Rational } from '#engine/measure/rational.ts';
import { fault, ok, type Result } from '#engine/result.ts';

/** From 0 to `possible`, both included. An item that was not answered is marked 0. */
export type Mark = {
  readonly item: string;
  readonly earned: Rational;
  readonly possible: Rational;
};

export type MarkLine = Mark & { readonly isCounted: boolean };

export type Sum = { readonly earned: Rational; readonly possible: Rational };

/** Nothing can be said where every item was retired. */
export type PartOutcome = 'passed' | 'failed' | 'nothing-to-count';

export type PartResult = Sum & {
  readonly lines: readonly MarkLine[];
  /** Of what could be earned; nothing where nothing could. */
  readonly share: Rational | undefined;
  readonly outcome: PartOutcome;
};

export type MarkFault =
  | { readonly code: 'MARKED_TWICE'; readonly item: string }
  | { readonly code: 'MARK_OUT_OF_RANGE'; readonly item: string };

export function partResult(
  marks: readonly Mark[],
  passMark: Quantity<'ratio'>,
  retired: ReadonlySet<string> = new Set(),
): Result<PartResult, readonly MarkFault[]> {
  const faults = faultsIn(marks);
  if (faults.length > 0) return fault(faults);
  const lines = marks.map((mark) => ({ ...mark, isCounted: !retired.has(mark.item) }));
  const sum = sumOf(lines.filter(({ isCounted }) => isCounted));
  if (sum.possible.equals(zero)) {
    return ok({ ...sum, lines, share: undefined, outcome: 'nothing-to-count' });
  }
  const share = sum.earned.div(sum.possible);
  return ok({ ...sum, lines, share, outcome: share.gte(passMark.value) ? 'passed' : 'failed' });
}

export const sumOf = (marks: readonly Mark[]): Sum => ({
  earned: marks.reduce((sum, { earned }) => sum.add(earned), zero),
  possible: marks.reduce((sum, { possible }) => sum.add(possible), zero),
});

/** The counted lines in groups, as by topic, which sum to the whole. */
export const sumsBy = <K>(
  { lines }: PartResult,
  keyOf: (item: string) => K,
): ReadonlyMap<K, Sum> => {
  const counted = lines.filter(({ isCounted }) => isCounted);
  const groups = Map.groupBy(counted, ({ item }) => keyOf(item));
  return new Map([...groups].map(([key, marks]) => [key, sumOf(marks)]));
};

function faultsIn(marks: readonly Mark[]): readonly MarkFault[] {
  const seen = new Set<string>();
  return marks.flatMap(({ item, earned, possible }): MarkFault[] => {
    const isTwice = seen.has(item);
    seen.add(item);
    const isRight = possible.gt(zero) && earned.gte(zero) && earned.lte(possible);
    return [
      ...(isTwice ? [{ code: 'MARKED_TWICE' as const, item }] : []),
      ...(isRight ? [] : [{ code: 'MARK_OUT_OF_RANGE' as const, item }]),
    ];
  });
}
