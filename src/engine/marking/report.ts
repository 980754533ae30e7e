import { formatExact } from '#engine/measure/format-exact.ts';
import type { FixedRule } from '#engine/method/data-sheet.ts';
import type { Ordered, Sequence } from '#engine/method/sequence.ts';
import type { Leak } from '#engine/water/water-test.ts';
import type { Attempt } from './attempt.ts';
import type { Item, Review } from './review.ts';

/** A review as plain JSON for other programs. Deviations are named by their place in the list. */
export function reportOf(
  { sequence }: Attempt,
  { score, outcome, items, nearestOrder, water }: Review,
) {
  return {
    score,
    outcome,
    deviations: items.map((item) => ({
      kind: item.kind,
      step: item.card,
      ...(item.at === undefined ? {} : { at: item.at }),
      severity: item.severity,
      ...particulars(sequence, item),
      points: item.points,
      because: item.because,
      rework: item.rework,
    })),
    nearestOrder,
    leaks: water.leaks.map(leakOf),
    repair: water.repair ?? null,
  };
}

function particulars(sequence: Sequence, item: Item) {
  switch (item.kind) {
    case 'out-of-order': {
      const { places, direction, broken } = item;
      return { places, direction, broken: broken.map((pair) => brokenOf(sequence, pair)) };
    }
    case 'rushed':
      return {
        waited: formatExact(item.waited),
        least: formatExact(item.least),
        next: item.next,
      };
    case 'out-of-tolerance':
      return {
        setting: item.setting,
        given: formatExact(item.given),
        allowed: allowedBy(item.rule),
      };
    default:
      return {};
  }
}

const brokenOf = ({ steps }: Sequence, { before, after, because, severity }: Ordered) => ({
  before: steps[before]!.id,
  after: steps[after]!.id,
  severity,
  because,
});

function allowedBy(rule: FixedRule): Readonly<Record<string, string>> {
  switch (rule.kind) {
    case 'between':
      return { from: formatExact(rule.low), to: formatExact(rule.high) };
    case 'about':
      return { about: formatExact(rule.value), within: formatExact(rule.within) };
    default:
      return { [rule.kind]: formatExact(rule.value) };
  }
}

const leakOf = ({ path, into, breaches }: Leak) => ({
  path: path.map(({ joint }) => joint.id),
  into,
  deviations: breaches,
});
