/**
 * A pass mark from a panel: each judge says for each item what share of candidates who are only just
 * fit would get it right, and the cut is the mean of the judges' sums (W. H. Angoff 1971, in R. L.
 * Thorndike, "Educational measurement", 2nd ed., from memory). The error of the cut is the sd of
 * judges' cuts over the root of their number (R. G. MacCann, G. Stanley, Practical Assessment, Research
 * & Evaluation 9(5), 2004, pareonline.net/getvn.asp?v=9&n=5): sound for judges who rated on their own.
 * Variance components are of judges crossed with items, one rating each (R. L. Brennan,
 * "Generalizability theory", 2001, from memory). O(judges x items).
 */
import { fault, ok, type Result } from '#engine/result.ts';

export type PanelFault = {
  readonly code: 'TOO_FEW_JUDGES' | 'TOO_FEW_ITEMS' | 'UNEVEN_ROW' | 'NOT_A_SHARE';
  readonly judge?: number;
  readonly item?: number;
  readonly message: string;
};

export type AngoffCut = {
  /** Of each judge, in items right. */
  readonly judges: readonly number[];
  /** In items right. */
  readonly cut: number;
  /** Over judges - 1. */
  readonly sd: number;
  readonly error: number;
  /** Of single ratings; as estimated, so that they can come out below 0. */
  readonly variance: { readonly judge: number; readonly item: number; readonly residual: number };
  /** Of the mean rating, from 0 to 1: for these very items, and for others of their kind. */
  readonly shareError: { readonly sameItems: number; readonly otherItems: number };
};

/** Ratings from 0 to 1, a row a judge; two judges and two items or more. Every fault at once. */
export function angoff(
  ratings: readonly (readonly number[])[],
): Result<AngoffCut, readonly PanelFault[]> {
  const faults = faultsOf(ratings);
  if (faults.length > 0) return fault(faults);
  const [judges, items] = [ratings.length, ratings[0]!.length];
  const sum = (values: readonly number[]): number => values.reduce((so, value) => so + value, 0);
  const squares = (values: readonly number[], middle: number): number =>
    sum(values.map((value) => (value - middle) ** 2));
  const cuts = ratings.map(sum);
  const cut = sum(cuts) / judges;
  const mean = cut / items;
  const ofItems = ratings[0]!.map((_, item) => sum(ratings.map((row) => row[item]!)) / judges);
  const betweenJudges = squares(cuts, cut) / items;
  const betweenItems = judges * squares(ofItems, mean);
  const left = Math.max(0, squares(ratings.flat(), mean) - betweenJudges - betweenItems);
  const residual = left / ((judges - 1) * (items - 1));
  const judge = (betweenJudges / (judges - 1) - residual) / items;
  const item = (betweenItems / (items - 1) - residual) / judges;
  const sd = Math.sqrt(squares(cuts, cut) / (judges - 1));
  const error = sd / Math.sqrt(judges);
  const sameItems = error / items;
  return ok({
    judges: cuts,
    cut,
    sd,
    error,
    variance: { judge, item, residual },
    shareError: {
      sameItems,
      otherItems: Math.sqrt(sameItems ** 2 + Math.max(0, item) / items),
    },
  });
}

function faultsOf(ratings: readonly (readonly number[])[]): readonly PanelFault[] {
  const items = ratings[0]?.length ?? 0;
  const faults: PanelFault[] = [];
  if (ratings.length < 2) {
    faults.push({ code: 'TOO_FEW_JUDGES', message: 'How far judges differ takes two or more.' });
  }
  if (items < 2) faults.push({ code: 'TOO_FEW_ITEMS', message: 'It takes two items or more.' });
  for (const [judge, row] of ratings.entries()) {
    if (row.length !== items) {
      const message = `Judge ${judge} rated ${row.length} items and the first one ${items}.`;
      faults.push({ code: 'UNEVEN_ROW', judge, message });
    }
    for (const [item, rating] of row.entries()) {
      if (rating >= 0 && rating <= 1) continue;
      const message = `A rating is a share from 0 to 1, not ${rating}.`;
      faults.push({ code: 'NOT_A_SHARE', judge, item, message });
    }
  }
  return faults;
}
