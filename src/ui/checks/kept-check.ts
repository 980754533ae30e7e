/** Checks that this device has taken along: what is judged by, and the sheet as far as it is filled in. */
import { isFields } from '#engine/fields.ts';
import type { CheckBundle } from '#engine/compile/check-bundle.ts';
import { fromText } from '#engine/compile/transport.ts';
import type { CheckSheet } from '#engine/exam/check-sheet.ts';
import type { Store } from '#ui/attempts/browser-store.ts';

export type KeptCheck = {
  readonly id: string;
  readonly company: string;
  readonly candidateName: string;
  readonly begunAt: string;
  readonly signedAt: string | null;
  /** Whether the other examiner broke it off, so that it leads nowhere. */
  readonly isOver: boolean;
  readonly sheet: CheckSheet;
  /** What the server has of the sheet, as JSON. */
  readonly savedSheet: string;
};

const [beginning, basis] = ['checks/', 'checks-basis/'];

const isKept = (value: unknown): value is KeptCheck =>
  isFields(value) &&
  ['id', 'company', 'candidateName', 'begunAt', 'savedSheet'].every(
    (name) => typeof value[name] === 'string',
  ) &&
  isFields(value['sheet']);

export function keptCheck(store: Store, id: string): KeptCheck | undefined {
  const found = store.read(beginning + id);
  return isKept(found) ? found : undefined;
}

export const keepCheck = (store: Store, check: KeptCheck): boolean =>
  store.write(beginning + check.id, check);

export function dropCheck(store: Store, id: string): void {
  store.remove(beginning + id);
  store.remove(basis + id);
}

/** Undefined for one that another build wrote and this one cannot read. */
export function keptBundle(store: Store, id: string): CheckBundle | undefined {
  const text = store.read(basis + id);
  try {
    return typeof text === 'string' ? (fromText(text) as CheckBundle) : undefined;
  } catch {
    return undefined;
  }
}

export const keepBundle = (store: Store, id: string, text: string): boolean =>
  store.write(basis + id, text);

/** The latest begun first. */
export const allKept = (store: Store): readonly KeptCheck[] =>
  store
    .names(beginning)
    .flatMap((name) => keptCheck(store, name.slice(beginning.length)) ?? [])
    .toSorted((a, b) => b.begunAt.localeCompare(a.begunAt));

export const instantNow = (): string => new Date().toISOString();

type Answer = {
  readonly check: Pick<KeptCheck, 'id' | 'candidateName' | 'begunAt' | 'signedAt' | 'sheet'>;
  readonly bundle: string;
  readonly isOver: boolean;
};

/** What the server answers with; undefined for anything else. */
export function answerFrom(value: unknown): Answer | undefined {
  if (!isFields(value) || !isFields(value['check']) || typeof value['bundle'] !== 'string') {
    return undefined;
  }
  return value as unknown as Answer;
}
