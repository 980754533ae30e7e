import type { WitnessPoint } from '#engine/exam/witness.ts';
import { say } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';

/** What an examiner looks for at a point, in a line. */
export function pointWords(point: WitnessPoint): string {
  switch (point.kind) {
    case 'done':
      return m.checks_point_done({ step: say(point.say) });
    case 'order':
      return m.checks_point_order({ step: say(point.say) });
    case 'wait':
      return m.checks_point_wait({ test: say(point.say) });
    default:
      return say(point.say);
  }
}
