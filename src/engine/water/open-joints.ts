import type { DecoyId, Failure, Joint, Keeper, SettingId, StepId } from '#engine/method/method.ts';

/** One thing wrong with the wall, as far as water cares. */
export type Breach =
  | { readonly kind: Failure; readonly steps: readonly StepId[]; readonly setting?: SettingId }
  | { readonly kind: 'spoilt'; readonly by: DecoyId | StepId };

/** A joint that lets water through, and the breaches (by place in their list) that keep it open. */
export type OpenJoint = { readonly joint: Joint; readonly breaches: readonly number[] };

/** The joints that are open: failed by a breach, or without any keeper and so open by nature. */
export function openJoints(
  joints: readonly Joint[],
  breaches: readonly Breach[],
): readonly OpenJoint[] {
  return joints
    .map((joint) => ({
      joint,
      breaches: breaches.flatMap((breach, index) => (opens(breach, joint) ? [index] : [])),
    }))
    .filter(({ joint, breaches: found }) => found.length > 0 || joint.keptBy.length === 0);
}

function opens(breach: Breach, joint: Joint): boolean {
  if (breach.kind === 'spoilt')
    return joint.spoiltBy.some((decoy) => (decoy as string) === breach.by);
  return joint.keptBy.some(
    (keeper) =>
      breach.steps.includes(keeper.step) &&
      keeper.fails.includes(breach.kind) &&
      concerns(keeper, breach.kind, breach.setting),
  );
}

const concerns = (keeper: Keeper, kind: Failure, setting: SettingId | undefined): boolean =>
  kind !== 'out-of-tolerance' || keeper.setting === undefined || keeper.setting === setting;
