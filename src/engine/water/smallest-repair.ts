/**
 * The smallest set of repairs that closes every open path. A path is closed when one of its joints
 * is, and a joint when everything that keeps it open is repaired; joints may share a breach, so this
 * is a minimum labelled cut (NP-hard in general: Zhang, Cai, Tang, "Minimum label cut", 2011, from
 * memory). Exact branch and bound: take a path that is still open and try each of its joints. A
 * method has few enough joints for that.
 */
import type { OpenJoint } from './open-joints.ts';
import { isOpen } from './repaired.ts';

/** Breaches in ascending order; of equally small sets the one found first; `undefined` if none. */
export function smallestRepair(
  paths: readonly (readonly OpenJoint[])[],
): readonly number[] | undefined {
  let best: ReadonlySet<number> | undefined;
  const search = (repaired: ReadonlySet<number>): void => {
    if (best && repaired.size >= best.size) return;
    const leaking = paths.find((path) => isOpen({ path }, repaired));
    if (!leaking) {
      best = repaired;
      return;
    }
    for (const { breaches } of leaking) {
      if (breaches.length > 0) search(new Set([...repaired, ...breaches]));
    }
  };
  search(new Set());
  return best && [...best].sort((a, b) => a - b);
}
