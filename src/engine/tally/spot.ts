import type { Method, MethodId, SettingId, StepId } from '#engine/method/method.ts';

/**
 * Where on a method work can go wrong: a step with anything held against it; two steps in the wrong
 * order; a wait cut short; a setting out of tolerance.
 */
export type Spot = { readonly method: MethodId } & (
  | { readonly kind: 'step' | 'wait'; readonly step: StepId }
  | { readonly kind: 'order'; readonly before: StepId; readonly after: StepId }
  | { readonly kind: 'setting'; readonly step: StepId; readonly setting: SettingId }
);

/** A name for it that no other spot has. */
export function spotKey(spot: Spot): string {
  switch (spot.kind) {
    case 'order':
      return [spot.method, spot.kind, spot.before, spot.after].join('/');
    case 'setting':
      return [spot.method, spot.kind, spot.step, spot.setting].join('/');
    default:
      return [spot.method, spot.kind, spot.step].join('/');
  }
}

/** The spot of a method that has this name; undefined where the method has none such, or no more. */
export function spotNamed(
  key: string,
  { id, steps }: Pick<Method, 'id' | 'steps'>,
): Spot | undefined {
  const [method, kind, first, second, ...more] = key.split('/');
  const step = steps.find((one) => one.id === first);
  if (method !== id || !step || more.length > 0) return undefined;
  const of = { method: id, step: step.id };
  if (kind === 'step' || kind === 'wait') {
    return second === undefined && (kind === 'step' || step.wait) ? { ...of, kind } : undefined;
  }
  if (kind === 'order') {
    const after = steps.find((one) => one.id === second);
    return after && { method: id, kind, before: step.id, after: after.id };
  }
  const setting = step.settings.find((one) => one.id === second);
  return kind === 'setting' && setting ? { ...of, kind, setting: setting.id } : undefined;
}
