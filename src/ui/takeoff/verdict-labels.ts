import type { VerdictKind } from '#engine/takeoff/verdict.ts';
import { m } from '#ui/messages/generated/messages.js';

/** What each verdict is called, from a few steps away. */
export const verdictLabels: Readonly<Record<VerdictKind, () => string>> = {
  right: m.takeoff_verdict_right,
  'badly-rounded': m.takeoff_verdict_badly_rounded,
  slip: m.takeoff_verdict_slip,
  'wrong-unit': m.takeoff_verdict_wrong_unit,
  wrong: m.takeoff_verdict_wrong,
};
