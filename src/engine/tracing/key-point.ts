/** What of a method can be done right or wrong by itself, and how much hangs on it. */
import { worst } from '#engine/marking/stakes.ts';
import type { Method, MethodId, SettingId, StepId } from '#engine/method/method.ts';
import type { Severity } from '#engine/severity.ts';

/**
 * `step` is all of a step together; `place` that it is done, and done in its turn; `wait` what must
 * pass after it; `setting` one value that is chosen with it.
 */
export type KeyPoint = {
  readonly method: MethodId;
  readonly step: StepId;
  readonly severity: Severity;
} & (
  | { readonly kind: 'step' | 'place' | 'wait' }
  | { readonly kind: 'setting'; readonly setting: SettingId }
);

/** A name for it that no other key point has. */
export const keyOf = (point: KeyPoint): string =>
  [point.method, point.step, point.kind, ...(point.kind === 'setting' ? [point.setting] : [])].join(
    '/',
  );

/** One for every step of the method, on whatever wall, as written. */
export const stepsOf = (method: Method): readonly KeyPoint[] =>
  method.steps.map(({ id: step, severity, after, wait, settings }) => ({
    kind: 'step' as const,
    method: method.id,
    step,
    severity: worst([
      severity,
      ...[...after, ...(wait ? [wait] : []), ...settings].map(severityOf),
    ]),
  }));

/** The parts of every step: its place, then its wait, then its settings. */
export const keyPointsOf = (method: Method): readonly KeyPoint[] =>
  method.steps.flatMap(({ id: step, severity, after, wait, settings }): readonly KeyPoint[] => {
    const of = { method: method.id, step };
    return [
      { ...of, kind: 'place', severity: worst([severity, ...after.map(severityOf)]) },
      ...(wait ? [{ ...of, kind: 'wait', severity: wait.severity } as const] : []),
      ...settings.map(
        ({ id: setting, severity }) => ({ ...of, kind: 'setting', setting, severity }) as const,
      ),
    ];
  });

const severityOf = ({ severity }: { readonly severity: Severity }): Severity => severity;
