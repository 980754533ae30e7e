/** What became of each finished attempt: kept beside it, under its id. */
import type { Store } from '#ui/attempts/browser-store.ts';

export const sentKinds = ['mockup', 'takeoff', 'written'] as const;
export type SentKind = (typeof sentKinds)[number];

export type Owner = { readonly company: string; readonly person: string };

/** Why the server did not take one: a code for each thing that is wrong with it. */
export type Refusal = readonly { readonly code: string; readonly path: string }[] | 'NOT_YOURS';

export type Mark = {
  readonly kind: SentKind;
  /** As whom it was made; nobody, where nobody was signed in. */
  readonly owner?: Owner;
  /** Persons who said that it is not theirs. */
  readonly declined?: readonly string[];
} & (
  | { readonly state: 'waiting' }
  | {
      readonly state: 'sent';
      readonly score: number;
      readonly outcome: string;
      readonly notCounted?: string;
    }
  | { readonly state: 'refused'; readonly why: Refusal }
  /** Refused, and kept here as practice. */
  | { readonly state: 'kept' }
);

const drawer = 'sending/';
const keptIn: Readonly<Record<SentKind, string>> = {
  mockup: 'attempt/',
  takeoff: 'takeoff/',
  written: 'written-run/',
};

const states = ['waiting', 'sent', 'refused', 'kept'];

const isMark = (value: unknown): value is Mark =>
  typeof value === 'object' &&
  value !== null &&
  'state' in value &&
  states.includes(value.state as string) &&
  'kind' in value &&
  sentKinds.some((kind) => kind === value.kind);

export function markOf(store: Store, id: string): Mark | undefined {
  const found = store.read(drawer + id);
  return isMark(found) ? found : undefined;
}

export const keepMark = (store: Store, id: string, mark: Mark): boolean =>
  store.write(drawer + id, mark);

/** The attempt itself, as it is kept. */
export const keptOf = (store: Store, kind: SentKind, id: string): unknown =>
  store.read(keptIn[kind] + id);

export function drop(store: Store, kind: SentKind, id: string): void {
  store.remove(keptIn[kind] + id);
  store.remove(drawer + id);
}

export type Marked = { readonly id: string; readonly mark: Mark };

/**
 * Every finished attempt that is still here. A wall is kept once it is finished; a problem and a run of
 * questions at every answer, so that it counts as finished only by its mark.
 */
export function allMarked(store: Store): readonly Marked[] {
  const idsIn = (beginning: string) =>
    store.names(beginning).map((name) => name.slice(beginning.length));
  const kept = {
    mockup: new Set(idsIn(keptIn.mockup)),
    takeoff: new Set(idsIn(keptIn.takeoff)),
    written: new Set(idsIn(keptIn.written)),
  };
  const marked = idsIn(drawer).flatMap((id): readonly Marked[] => {
    const mark = markOf(store, id);
    return mark && kept[mark.kind].has(id) ? [{ id, mark }] : [];
  });
  const known = new Set(marked.map(({ id }) => id));
  const bare = [...kept.mockup].filter((id) => !known.has(id));
  return [
    ...marked,
    ...bare.map((id) => ({ id, mark: { kind: 'mockup', state: 'waiting' } as const })),
  ];
}
