/**
 * What an examiner watches and measures while real work is done, made from the same Sequence as the
 * simulator and its marking, so that the hands-on check asks for exactly what was taught.
 *
 * The weather of a real wall is what was measured there, where it was: rules and waits that depend on it
 * follow. Steps that change it (a surface that is warmed) are not followed here: the examiner measures again
 * and makes the points anew. O(steps + constraints).
 */
import type { FixedRule } from '#engine/method/data-sheet.ts';
import type { HazardId, SettingId, StepId } from '#engine/method/method.ts';
import { fixRule, leastOf } from '#engine/method/rule.ts';
import type { Ask, Drying, Sequence, SequenceStep } from '#engine/method/sequence.ts';
import type { Weather } from '#engine/method/site.ts';
import type { Severity } from '#engine/severity.ts';
import type { Text } from '#engine/text.ts';

type Kind<K extends string> = {
  readonly kind: K;
  /** The same for the same method and site, whatever the weather: `prime-wall/key-point/0`. */
  readonly id: string;
  readonly step: StepId;
  /** What is done, what it is measured for, or by which touch test one can tell. */
  readonly say: Text;
  readonly because: Text;
  readonly severity: Severity;
  /** Of the step: its cautions stand beside the point. */
  readonly hazards: readonly HazardId[];
};

/** A step done at all. */
export type DonePoint = Kind<'done'>;
/** How it is done. */
export type KeyPoint = Kind<'key-point'>;
/** That it comes after another step. */
export type OrderPoint = Kind<'order'> & { readonly after: StepId };
export type MeasurePoint = Kind<'measure'> & {
  readonly setting: SettingId;
  readonly rule: FixedRule;
};
/** How long was waited before anything covered it. */
export type WaitPoint = Kind<'wait'> & { readonly rule: FixedRule };

export type WatchPoint = DonePoint | KeyPoint | OrderPoint;
export type MeasuredPoint = MeasurePoint | WaitPoint;
export type WitnessPoint = WatchPoint | MeasuredPoint;

export const isMeasured = (point: WitnessPoint): point is MeasuredPoint =>
  point.kind === 'measure' || point.kind === 'wait';

/** In the order of the steps as written. `weather`: as measured at the wall, else as the site states it. */
export const witnessPoints = (sequence: Sequence, weather?: Weather): readonly WitnessPoint[] =>
  sequence.steps.flatMap((step, place) => [
    ...watchPoints(sequence, step, place),
    ...step.asks.map((ask) => measurePoint(step, ask, weather)),
    ...(step.dries ? [waitPoint(sequence, step, step.dries, weather)] : []),
  ]);

/**
 * Leaving a step out or breaking the order is as severe as the method says; a key point that was missed in a
 * step that was done is never worse than major, since whatever else it spoils is measured.
 */
function watchPoints(
  { steps, constraints }: Sequence,
  step: SequenceStep,
  place: number,
): readonly WatchPoint[] {
  const { id, hazards, severity } = step;
  const of = { step: id, hazards, because: step.reason };
  return [
    { ...of, kind: 'done', id: `${id}/done`, say: step.say, severity },
    ...step.keyPoints.map((say, index) => ({
      ...of,
      kind: 'key-point' as const,
      id: `${id}/key-point/${index}`,
      say,
      severity: severity === 'critical' ? ('major' as const) : severity,
    })),
    ...constraints
      .filter(({ after }) => after === place)
      .map(({ before, because, severity }) => ({
        ...of,
        kind: 'order' as const,
        id: `${id}/after/${steps[before]!.id}`,
        after: steps[before]!.id,
        say: steps[before]!.say,
        because,
        severity,
      })),
  ];
}

const measurePoint = (
  { id, hazards }: SequenceStep,
  { id: setting, ask, because, severity, rule, sheetNumber }: Ask,
  weather: Weather | undefined,
): MeasurePoint => ({
  kind: 'measure',
  id: `${id}/setting/${setting}`,
  step: id,
  setting,
  say: ask,
  because,
  severity,
  hazards,
  rule: weather ? fixRule(sheetNumber.rule, weather) : rule,
});

function waitPoint(
  { dataSheet }: Sequence,
  { id, hazards }: SequenceStep,
  { number, least, test, because, severity }: Drying,
  weather: Weather | undefined,
): WaitPoint {
  const written = dataSheet.numbers.get(number)?.rule;
  // Nobody waits too long for something to dry: of any rule, its low end counts.
  const value = weather && written ? leastOf(fixRule(written, weather)) : least;
  const rule: FixedRule = { kind: 'at-least', value };
  return { kind: 'wait', id: `${id}/wait`, step: id, say: test, because, severity, hazards, rule };
}
