/** What the office may do with a certificate, and when: each with the reason for it. */
import { fault, ok, type Result } from '#engine/result.ts';
import type { Standing } from './state.ts';

export const changes = ['suspend', 'lift', 'withdraw', 'reissue'] as const;
export type Change = (typeof changes)[number];

export const isChange = (value: string): value is Change =>
  changes.some((change) => change === value);

/** Each as it stands in the certificate's history. */
export const eventOf = {
  suspend: 'suspended',
  lift: 'lifted',
  withdraw: 'withdrawn',
  reissue: 'reissued',
} as const satisfies Readonly<Record<Change, string>>;

export const eventKinds = ['granted', 'renewed', ...Object.values(eventOf)] as const;
export type EventKind = (typeof eventKinds)[number];

/** From which standing each is possible, and what it leads to. Withdrawing is for good. */
const table: Readonly<Record<Change, Readonly<Partial<Record<Standing, Standing>>>>> = {
  suspend: { 'in-force': 'suspended' },
  lift: { suspended: 'in-force' },
  withdraw: { 'in-force': 'withdrawn', suspended: 'withdrawn' },
  reissue: { 'in-force': 'in-force', suspended: 'suspended' },
};

/** In letters and other signs, without blanks at the ends; both included. */
export const reasonLengths = { least: 5, most: 500 } as const;

export type ChangeFault = 'NOT_NOW' | 'NO_REASON' | 'LONG_REASON';

export const changesFrom = (standing: Standing): readonly Change[] =>
  changes.filter((change) => table[change][standing] !== undefined);

/** What the certificate stands as afterwards, or why the change is refused. */
export function changed(
  standing: Standing,
  change: Change,
  reason: string,
): Result<Standing, ChangeFault> {
  const after = table[change][standing];
  if (after === undefined) return fault('NOT_NOW');
  const { length } = reason.trim();
  if (length < reasonLengths.least) return fault('NO_REASON');
  return length > reasonLengths.most ? fault('LONG_REASON') : ok(after);
}
