import type { OpenJoint } from './open-joints.ts';

/** Whether a joint is shut once these breaches are repaired: all that keep it open must be. */
export const isClosed = ({ breaches }: OpenJoint, repaired: ReadonlySet<number>): boolean =>
  breaches.length > 0 && breaches.every((breach) => repaired.has(breach));

/** Whether water still gets in by this way once these breaches are repaired. */
export const isOpen = (
  { path }: { readonly path: readonly OpenJoint[] },
  repaired: ReadonlySet<number>,
): boolean => !path.some((joint) => isClosed(joint, repaired));
