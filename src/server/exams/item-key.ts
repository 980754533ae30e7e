import { createHash } from 'node:crypto';
import type { KeptPlan } from './plan.ts';

/**
 * What an item is called on the way to the candidate: it says nothing of what is asked, and no other form
 * has it, so that an answer for another form is known as one.
 */
export const itemKey = ({ seed }: Pick<KeptPlan, 'seed'>, item: string): string =>
  createHash('sha256').update(`${seed}/item/${item}`).digest('base64url').slice(0, 16);

/** Undefined for what is not on this form. */
export const itemWith = (plan: KeptPlan, key: string): string | undefined =>
  plan.items.find((item) => itemKey(plan, item) === key);
