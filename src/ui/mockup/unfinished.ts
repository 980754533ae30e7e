import { isFields } from '#engine/fields.ts';
import type { Text } from '#engine/text.ts';
import type { Store } from '#ui/attempts/browser-store.ts';
import type { Helped, Move } from './move.ts';

/** A wall that somebody left, under its address. */
export type Unfinished = {
  readonly address: string;
  readonly title: Text;
  /** When it was last touched: an instant in ISO 8601. */
  readonly at: string;
  readonly moves: readonly Move[];
  readonly helped: readonly Helped[];
  /** The attempt that it became. */
  readonly attempt?: string;
};

const drawer = 'mockup/';

/** How many walls a browser keeps; beyond that the ones left longest ago give way. */
const mostKept = 30;

export function keepUnfinished(store: Store, work: Unfinished): boolean {
  const names = store.names(drawer);
  if (names.length > mostKept) {
    const byAge = names.map((name) => ({ name, at: instantOf(store.read(name)) }));
    byAge.sort((a, b) => a.at.localeCompare(b.at));
    for (const { name } of byAge.slice(0, names.length - mostKept)) store.remove(name);
  }
  return store.write(drawer + work.address, work);
}

const instantOf = (found: unknown): string => (isUnfinished(found) ? found.at : '');

export const dropUnfinished = (store: Store, address: string): void =>
  store.remove(drawer + address);

export function findUnfinished(store: Store, address: string): Unfinished | undefined {
  const found = store.read(drawer + address);
  return isUnfinished(found) ? found : undefined;
}

/** Those with something on the wall and not yet inspected, the latest first. */
export const allUnfinished = (store: Store): readonly Unfinished[] =>
  store
    .names(drawer)
    .flatMap((name) => {
      const found = store.read(name);
      const isOpen = isUnfinished(found) && found.moves.length > 0 && found.attempt === undefined;
      return isOpen ? [found] : [];
    })
    .toSorted((a, b) => b.at.localeCompare(a.at));

const isTextRecord = (value: unknown): boolean =>
  isFields(value) && Object.values(value).every((text) => typeof text === 'string');

const isMove = (move: unknown): boolean =>
  isFields(move) &&
  (typeof move['wait'] === 'number'
    ? move['wait'] > 0
    : typeof move['card'] === 'string' && isTextRecord(move['settings']));

const isHelped = (helped: unknown): boolean =>
  isFields(helped) && typeof helped['help'] === 'string' && typeof helped['card'] === 'string';

function isUnfinished(found: unknown): found is Unfinished {
  return (
    isFields(found) &&
    ['address', 'at'].every((name) => typeof found[name] === 'string') &&
    isTextRecord(found['title']) &&
    Array.isArray(found['moves']) &&
    found['moves'].every(isMove) &&
    Array.isArray(found['helped']) &&
    found['helped'].every(isHelped) &&
    (found['attempt'] === undefined || typeof found['attempt'] === 'string')
  );
}
