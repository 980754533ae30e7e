import { dimension } from '#engine/measure/dimension.ts';
import { ofBaseUnits } from '#engine/measure/quantity.ts';
import { precedes } from '#engine/method/partial-order.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import type { Standing } from './attempt.ts';
import type { Rushed } from './deviation.ts';
import { gradedShare } from './stakes.ts';
import { dryingFrom } from './touch-test.ts';

/**
 * Waits cut short: the first step that had to wait came before the drying time was over. Cards
 * without a minute are not judged, nor is a step that came before what it should have waited for. Time in
 * which a surface too near the dew point let nothing dry counts only where that never changed: then not
 * the clock is at fault but the step that was to change it, which is an item of its own.
 */
export function rushed(sequence: Sequence, standing: readonly Standing[]): readonly Rushed[] {
  return standing.flatMap((card, index) => {
    const step = sequence.steps[card.step];
    if (!step?.dries || card.minute === undefined) return [];
    const place = standing.findIndex(
      (later, at) => at > index && later.minute && precedes(sequence.order, card.step, later.step),
    );
    const next = standing[place];
    if (!next?.minute) return [];
    const from = dryingFrom(sequence, standing.slice(0, place), card) ?? card.minute;
    const waited = ofBaseUnits(next.minute.sub(from).mul(60n), dimension('time'));
    const { least, severity, because } = step.dries;
    if (waited.value.gte(least.value)) return [];
    return [
      {
        kind: 'rushed',
        card: step.id,
        at: card.at,
        severity,
        because,
        rework: step.rework,
        share: gradedShare(least.value.sub(waited.value).div(least.value)),
        waited,
        least,
        next: sequence.steps[next.step]!.id,
      },
    ];
  });
}
