import { fault, ok, type Result } from '#engine/result.ts';
import { isBarred, weightOf, type BankItem } from './bank.ts';
import type { FormFault, FormRequest } from './form-request.ts';
import type { Blueprint } from './scheme.ts';
import { spreadOf, square, type Spread } from './spread.ts';

/** What a topic's questions are drawn from: all that may be on this form. */
export type Pool<I extends BankItem> = {
  readonly topic: string;
  readonly count: number;
  readonly items: readonly I[];
  readonly weights: readonly number[];
  readonly heaviest: number;
};

/**
 * One pool a topic, or every topic that has too few. What the candidate had on an earlier try is left
 * out wherever enough others are there.
 */
export function poolsOf<I extends BankItem>(
  request: FormRequest<I>,
  cap: number,
): Result<readonly Pool<I>[], readonly FormFault[]> {
  const byTopic = Map.groupBy(request.bank, ({ topic }) => topic);
  const faults: FormFault[] = twiceIn(request.bank);
  const pools: Pool<I>[] = [];
  for (const [topic, count] of request.blueprint) {
    const all = byTopic.get(topic) ?? [];
    const left = all.filter((item) => !isBarred(item, request.drawn, cap));
    if (all.length < count) {
      faults.push({ code: 'TOO_FEW', topic, wanted: count, there: all.length });
    } else if (left.length < count) {
      faults.push({ code: 'SEEN_TOO_OFTEN', topic, wanted: count, there: left.length });
    }
    const fresh = left.filter(({ id }) => !request.seen?.has(id));
    const items = fresh.length >= count ? fresh : left;
    const weights = items.map(weightOf);
    const heaviest = weights.reduce((a, b) => Math.max(a, b), 0);
    pools.push({ topic, count, items, weights, heaviest });
  }
  return faults.length > 0 ? fault(faults) : ok(pools);
}

function twiceIn(bank: readonly BankItem[]): FormFault[] {
  const seen = new Set<string>();
  return bank.flatMap(({ id }) => {
    if (seen.has(id)) return [{ code: 'ITEM_TWICE' as const, id }];
    seen.add(id);
    return [];
  });
}

/**
 * The difficulty that every form aims at: that of the blueprint over the whole bank, each topic with
 * the weight of its count. Exposure does not move it, so forms stay comparable over the years; retiring
 * or adding items does.
 */
export function targetOf(bank: readonly BankItem[], blueprint: Blueprint): Spread {
  const byTopic = Map.groupBy(bank, ({ topic }) => topic);
  const parts = [...blueprint].map(([topic, count]) => ({
    count,
    of: spreadOf((byTopic.get(topic) ?? []).map(({ difficulty }) => difficulty)),
  }));
  const total = parts.reduce((sum, { count }) => sum + count, 0);
  if (total === 0) return { mean: 0, spread: 0 };
  const mean = parts.reduce((sum, { count, of }) => sum + count * of.mean, 0) / total;
  const variance =
    parts.reduce(
      (sum, { count, of }) => sum + count * (square(of.spread) + square(of.mean - mean)),
      0,
    ) / total;
  return { mean, spread: Math.sqrt(variance) };
}
