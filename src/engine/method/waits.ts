import { approximate } from '#engine/measure/rational.ts';
import type { Curve, DataSheet, Rule } from './data-sheet.ts';
import type { Method } from './method.ts';
import { leastOf } from './rule.ts';

/** Minutes that can be waited at one press, where the method has waits that are as long. */
const presses = [1, 5, 60, 24 * 60];
const always = 2;

/** The same for every wall of a method, so that they do not give away what this wall waits for. */
export function waitsFor({
  method,
  dataSheet,
}: {
  readonly method: Method;
  readonly dataSheet: DataSheet;
}): readonly number[] {
  const longest = Math.max(
    0,
    ...method.steps.flatMap(({ wait }) => {
      const rule = wait && dataSheet.numbers.get(wait.number)?.rule;
      return rule ? [longestOf(rule)] : [];
    }),
  );
  return presses.filter((minutes, place) => place < always || minutes <= longest);
}

const secondsInMinute = 60;

function longestOf(rule: Rule): number {
  if (rule.kind !== 'by') return approximate(leastOf(rule).value) / secondsInMinute;
  const most = (curve: Curve): number =>
    Math.max(...curve.rows.map(({ value }) => approximate(value.value)));
  return (most(rule.curve) * (rule.times ? most(rule.times) : 1)) / secondsInMinute;
}
