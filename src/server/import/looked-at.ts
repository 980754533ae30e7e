/** A plan is looked at before it is written: what was looked at must be what is written. */
import { createHash } from 'node:crypto';
import type { FileFault, ImportPlan, PlannedRow } from '#engine/record/import-plan.ts';

export type How = {
  /** Of the plan that was looked at. */
  readonly digest: string;
  /** Writes the sound rows although others are faulty. */
  readonly leaveOut: boolean;
};

/** `CHANGED` and `FAULTY` come with the plan as it is now; nothing is written. */
export type WriteFault<Plan> =
  FileFault | { readonly code: 'CHANGED' | 'FAULTY'; readonly plan: Plan };

export const isFaulty = ({ rows }: ImportPlan): boolean =>
  rows.some(({ state }) => state === 'faulty');

export function notLookedAt<Plan extends ImportPlan>(
  plan: Plan,
  { digest, leaveOut }: How,
): { readonly code: 'CHANGED' | 'FAULTY'; readonly plan: Plan } | undefined {
  if (plan.digest !== digest) return { code: 'CHANGED', plan };
  if (!leaveOut && isFaulty(plan)) return { code: 'FAULTY', plan };
  return undefined;
}

/** Of what each row does, in its order. */
export const digestOf = <Row extends PlannedRow>(
  rows: readonly Row[],
  does: (row: Row) => readonly unknown[],
): string =>
  createHash('sha256')
    .update(JSON.stringify(rows.map(does)))
    .digest('hex');

/** Rows that one statement writes: well under the number of values that either database takes. */
const block = 500;

export async function inBlocks<Row>(
  rows: readonly Row[],
  write: (some: readonly Row[]) => Promise<unknown>,
): Promise<void> {
  for (let from = 0; from < rows.length; from += block) await write(rows.slice(from, from + block));
}
