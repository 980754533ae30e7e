/** What the sheet of a hands-on check comes to: its lines read, measured, judged and summed. */
import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { leastOf } from '#engine/method/rule.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { weatherConditions, type Weather, type WeatherCondition } from '#engine/method/site.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { weatherLine, type CheckSheet } from './check-sheet.ts';
import { handsOnResult, type HandsOnResult } from './hands-on-result.ts';
import { judgedPoints, type Judged, type Observation } from './judged-points.ts';
import { isMeasured, witnessPoints, type WitnessPoint } from './witness.ts';

/** A line that cannot be read: a watched point that is neither, a measure that is none or of another kind. */
export type LineFault = { readonly code: 'UNREADABLE' | 'WRONG_KIND'; readonly line: string };

export type JudgedSheet = { readonly judged: readonly Judged[]; readonly result: HandsOnResult };

const dimensions = {
  'air-temperature': 'temperature',
  'surface-temperature': 'temperature',
  'relative-humidity': 'ratio',
} as const satisfies Readonly<Record<WeatherCondition, string>>;

/** As measured at the wall; what was not measured, or cannot be read, is left out. */
export const weatherIn = (sheet: CheckSheet): Weather =>
  new Map(
    weatherConditions.flatMap((condition): (readonly [WeatherCondition, Quantity])[] => {
      const says = sheet[weatherLine(condition)]?.says;
      const read = says ? parseQuantity(says, dimensions[condition]) : undefined;
      return read?.ok ? [[condition, read.value]] : [];
    }),
  );

/** The points of a wall under the weather that was measured there; else as the site states it. */
export function pointsUnder(sequence: Sequence, sheet: CheckSheet): readonly WitnessPoint[] {
  const measured = weatherIn(sheet);
  if (measured.size === 0) return witnessPoints(sequence);
  return witnessPoints(sequence, new Map([...sequence.weather, ...measured]));
}

export function judgedSheet(
  sequence: Sequence,
  passMark: Quantity<'ratio'>,
  sheet: CheckSheet,
): Result<JudgedSheet, readonly LineFault[]> {
  const points = pointsUnder(sequence, sheet);
  const faults: LineFault[] = weatherConditions
    .filter((condition) => sheet[weatherLine(condition)]?.says && !weatherIn(sheet).has(condition))
    .map((condition) => ({ code: 'UNREADABLE', line: weatherLine(condition) }));
  const seen = points.flatMap((point): readonly Observation[] => {
    const says = sheet[point.id]?.says?.trim();
    if (!says) return [];
    const observation = observationOf(point, says);
    if (!observation) faults.push({ code: 'UNREADABLE', line: point.id });
    return observation ? [observation] : [];
  });
  if (faults.length > 0) return fault(faults);
  const judged = judgedPoints(points, seen);
  if (!judged.ok) {
    return fault(judged.error.map(({ point }) => ({ code: 'WRONG_KIND', line: point })));
  }
  return ok({ judged: judged.value, result: handsOnResult(judged.value, passMark) });
}

function observationOf(point: WitnessPoint, says: string): Observation | undefined {
  if (!isMeasured(point)) {
    if (says !== 'right' && says !== 'wrong') return undefined;
    return { point: point.id, kind: 'watched', right: says === 'right' };
  }
  const value = parseQuantity(says, leastOf(point.rule).dimension.name);
  return value.ok ? { point: point.id, kind: 'measured', value: value.value } : undefined;
}
