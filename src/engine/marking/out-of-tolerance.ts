import { judge } from '#engine/method/rule.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import type { Standing } from './attempt.ts';
import type { OutOfTolerance } from './deviation.ts';
import { gradedShare } from './stakes.ts';

/** Settings that were given and that the data sheet does not allow. */
export function outOfTolerance(
  sequence: Sequence,
  standing: readonly Standing[],
): readonly OutOfTolerance[] {
  return standing.flatMap(({ step: place, at, settings }) => {
    const step = sequence.steps[place]!;
    return step.asks.flatMap((ask) => {
      const given = settings.get(ask.id);
      const verdict = given && judge(ask.rule, given, ask.sheetNumber.entry);
      if (!given || !verdict || verdict.within) return [];
      return [
        {
          kind: 'out-of-tolerance' as const,
          card: step.id,
          at,
          severity: ask.severity,
          because: ask.because,
          rework: step.rework,
          share: gradedShare(verdict.degree),
          setting: ask.id,
          given,
          rule: ask.rule,
        },
      ];
    });
  });
}
