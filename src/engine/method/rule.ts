import { compare, scale } from '#engine/measure/arithmetic.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { ofBaseUnits } from '#engine/measure/quantity.ts';
import { type Rational, one, zero } from '#engine/measure/rational.ts';
import type { Curve, Entry, FixedRule, Rule } from './data-sheet.ts';
import { limitsOf } from './offered.ts';
import type { Weather } from './site.ts';

/** The rule under one weather: a curve becomes the least value that it gives there. */
export function fixRule(rule: Rule, weather: Weather): FixedRule {
  if (rule.kind !== 'by') return rule;
  const least = along(rule.curve, weather);
  const factor = rule.times ? along(rule.times, weather).value : one;
  return { kind: 'at-least', value: scale(least, factor) };
}

/** Straight lines between the rows, flat beyond the ends; the first row where the weather is silent. */
function along({ by, rows }: Curve, weather: Weather): Quantity {
  const first = rows[0]!;
  const at = weather.get(by) ?? first.at;
  const upper = rows.find((row) => compare(row.at, at) >= 0) ?? rows.at(-1)!;
  const lower = rows.findLast((row) => compare(row.at, at) <= 0) ?? first;
  const span = upper.at.value.sub(lower.at.value);
  if (span.equals(0n)) return lower.value;
  const part = at.value.sub(lower.at.value).div(span);
  const rise = upper.value.value.sub(lower.value.value).mul(part);
  return ofBaseUnits(lower.value.value.add(rise), lower.value.dimension);
}

/** The smallest value that is right. */
export function leastOf(rule: FixedRule): Quantity {
  switch (rule.kind) {
    case 'between':
      return rule.low;
    case 'about':
      return bounds(rule).low!;
    default:
      return rule.value;
  }
}

/** What to aim for where the data sheet does not say: the value itself, or the middle of a range. */
export function middleOf(rule: FixedRule): Quantity {
  if (rule.kind !== 'between') return rule.value;
  const sum = rule.low.value.add(rule.high.value);
  return ofBaseUnits(sum.div(2n), rule.low.dimension);
}

export type Judgement = {
  readonly within: boolean;
  /** How far off, from 0 (within) to 1 (as far as the simulator allows, or by the whole bound). */
  readonly degree: Rational;
};

/** Judges a value by a rule, bounds included. Throws a DimensionError on another dimension. */
export function judge(rule: FixedRule, given: Quantity, entry?: Entry): Judgement {
  const { low, high } = bounds(rule);
  const ends = entry && limitsOf(entry);
  if (low && compare(given, low) < 0) return off(given, low, ends?.from);
  if (high && compare(given, high) > 0) return off(given, high, ends?.to);
  return { within: true, degree: zero };
}

function off(given: Quantity, bound: Quantity, end: Quantity | undefined): Judgement {
  const distance = given.value.sub(bound.value).abs();
  const farthest = (end ? end.value.sub(bound.value) : bound.value).abs();
  const degree = farthest.lte(distance) ? one : distance.div(farthest);
  return { within: false, degree };
}

export type Bounds = { readonly low?: Quantity; readonly high?: Quantity };

export function bounds(rule: FixedRule): Bounds {
  switch (rule.kind) {
    case 'exactly':
      return { low: rule.value, high: rule.value };
    case 'at-least':
      return { low: rule.value };
    case 'at-most':
      return { high: rule.value };
    case 'between':
      return { low: rule.low, high: rule.high };
    case 'about': {
      const { value, within } = rule;
      return {
        low: ofBaseUnits(value.value.sub(within.value), value.dimension),
        high: ofBaseUnits(value.value.add(within.value), value.dimension),
      };
    }
  }
}
