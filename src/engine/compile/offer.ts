import { compare, scale } from '#engine/measure/arithmetic.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Rational } from '#engine/measure/rational.ts';
import type { ConditionalRule, Curve, Entry, Rule } from '#engine/method/data-sheet.ts';
import { bounds, judge } from '#engine/method/rule.ts';

/**
 * Whether one of the choices is right, in the worst weather where the rule depends on it. Exact, and
 * without walking through a range.
 */
export function offersRight(rule: Rule, entry: Entry): boolean {
  const worst = rule.kind === 'by' ? { kind: 'at-least' as const, value: worstOf(rule) } : rule;
  if (entry.kind === 'one-of') return entry.values.some((value) => judge(worst, value).within);
  const { low, high } = bounds(worst);
  const { from, to, by } = entry;
  const steps = ({ value }: Quantity): Rational => value.sub(from.value).div(by.value);
  const first = low && steps(low).ceil();
  const last = steps(high && compare(high, to) < 0 ? high : to).floor();
  return first?.gt(0n) ? last.gte(first.n) : last.gte(0n);
}

/** The most that the rule asks in any weather that it knows. */
function worstOf({ curve, times }: ConditionalRule): Quantity {
  const most = highestOf(curve);
  return times ? scale(most, highestOf(times).value) : most;
}

const highestOf = ({ rows }: Curve): Quantity =>
  rows.map(({ value }) => value).reduce((most, value) => (compare(value, most) > 0 ? value : most));
