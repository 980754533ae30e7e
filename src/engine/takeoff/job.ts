/**
 * A job of several take-offs: what two of them ask alike is entered once, and each is worked out as soon
 * as it has what it needs.
 */
import type { Result } from '#engine/result.ts';
import type { Family, FamilyId } from './family.ts';
import { jobEntries, type JobEntry, type JobFault } from './job-entry.ts';
import { jobSheet, type JobSheet } from './job-sheet.ts';
import type { Takeoff } from './takeoff.ts';

export type JobField = {
  readonly key: string;
  readonly entry: JobEntry;
  readonly families: readonly FamilyId[];
};

/** The same name, in both languages, for the same kind of value is the same thing on one wall. */
const keyOf = ({ id, name, asks }: JobEntry): string =>
  [id, name.en, name.es, asks.kind === 'amount' ? asks.style : `${asks.yes.en}/${asks.no.en}`].join(
    '|',
  );

/** Everything that the take-offs ask for, in their order, each once. */
export function jobFields(families: readonly Family[]): readonly JobField[] {
  const fields = new Map<string, JobField>();
  for (const family of families) {
    for (const entry of jobEntries(family)) {
      const key = keyOf(entry);
      const known = fields.get(key);
      const families = [...(known?.families ?? []), family.id];
      fields.set(key, known ? { ...known, families } : { key, entry, families: [family.id] });
    }
  }
  return [...fields.values()];
}

export type JobPart = {
  readonly takeoff: Takeoff;
  readonly sheet: Result<JobSheet, readonly JobFault[]>;
};

/** `entries` are by the keys of the fields. */
export const workJob = (
  takeoffs: readonly Takeoff[],
  entries: Readonly<Record<string, string>>,
): readonly JobPart[] =>
  takeoffs.map((takeoff) => {
    const own = jobEntries(takeoff.family).flatMap((entry) => {
      const text = entries[keyOf(entry)];
      return text === undefined ? [] : [[entry.id, text] as const];
    });
    return { takeoff, sheet: jobSheet(takeoff, new Map(own)) };
  });

export type FieldFault = { readonly key: string; readonly fault: JobFault };

/** Every fault at the field that mends it; of several, at the last one that was entered. */
export function fieldFaults(parts: readonly JobPart[]): readonly FieldFault[] {
  return parts.flatMap(({ takeoff, sheet }) => {
    if (sheet.ok) return [];
    const keys = new Map(jobEntries(takeoff.family).map((entry) => [entry.id, keyOf(entry)]));
    const [first = ''] = keys.values();
    return sheet.error.map((fault) => ({
      key: fault.among.flatMap((id) => keys.get(id) ?? []).at(-1) ?? first,
      fault,
    }));
  });
}
