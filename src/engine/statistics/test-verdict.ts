/**
 * What there is to say of a test as a whole: whether it tells people apart, and the curves of its items
 * where there are persons enough for them. What is undefined is told as such, and a run that stopped
 * short is never a curve.
 */
import type { Result } from '#engine/result.ts';
import { type Enough, fewest, fewestForCurves, ifEnough } from './enough.ts';
import { fitItems } from './fit-items.ts';
import type { FitFault, ItemFit } from './item-fit.ts';
import { kr20Interval } from './kr20-interval.ts';
import { reliability, type Reliability } from './reliability.ts';
import { answeredAll, type Responses } from './responses.ts';
import type { Interval } from './wilson.ts';

/** Common practice: totals that come out less the same than this are no ground for a decision. */
export const reliableFrom = 0.7;

export type TestVerdict =
  | { readonly standing: 'too-few-persons'; readonly have: number; readonly need: number }
  /** One item only, or all persons with as many right. */
  | { readonly standing: 'nothing-to-tell' }
  | {
      /** The interval lies above the line, on both sides of it, or below. */
      readonly standing: 'tells-people-apart' | 'unsure' | 'does-not-tell-people-apart';
      readonly reliability: Reliability;
      readonly interval: Interval;
    };

/** Of those who answered every item. O(persons x items). */
export function testVerdict(responses: Responses): TestVerdict {
  const { persons } = answeredAll(responses);
  const need = fewest.reliability;
  if (persons < need) return { standing: 'too-few-persons', have: persons, need };
  const found = reliability(responses);
  if (!found.ok) return { standing: 'nothing-to-tell' };
  const interval = kr20Interval(found.value.kr20, responses.items, persons);
  const standing =
    interval.low >= reliableFrom
      ? 'tells-people-apart'
      : interval.high < reliableFrom
        ? 'does-not-tell-people-apart'
        : 'unsure';
  return { standing, reliability: found.value, interval };
}

/** Fitted only where there are persons enough; `value` is still a run that may have stopped short. */
export const itemCurves = (
  responses: Responses,
  model: keyof typeof fewestForCurves,
): Enough<Result<ItemFit, FitFault>> =>
  ifEnough(responses.persons, fewestForCurves[model], () => fitItems(responses, model));
