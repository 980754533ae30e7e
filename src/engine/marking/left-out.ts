import { one } from '#engine/measure/rational.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import type { Standing } from './attempt.ts';
import type { LeftOut } from './deviation.ts';

/** The steps of the sequence that were never played. */
export function leftOut(sequence: Sequence, standing: readonly Standing[]): readonly LeftOut[] {
  const played = new Set(standing.map(({ step }) => step));
  return sequence.steps
    .filter((_, place) => !played.has(place))
    .map(({ id, severity, reason, rework }) => ({
      kind: 'left-out',
      card: id,
      at: undefined,
      severity,
      because: reason,
      rework,
      share: one,
    }));
}
