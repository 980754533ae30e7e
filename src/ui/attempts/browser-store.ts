/**
 * What this browser keeps, by name, as JSON. Where it keeps nothing (storage is off, or full), writing
 * says so, and what was written stays until the page is left.
 */
export type Store = {
  readonly read: (name: string) => unknown;
  /** Whether it will still be there when the page is opened again. */
  readonly write: (name: string, value: unknown) => boolean;
  readonly remove: (name: string) => void;
  /** The names that begin so, in no particular order. */
  readonly names: (beginning: string) => readonly string[];
};

type Keeping = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/** `keeping` throws where the browser does not let a page keep anything. */
export function storeIn(keeping: () => Keeping): Store {
  const unkept = new Map<string, string>();
  const attempt = <T>(use: (kept: Keeping) => T, otherwise: T): T => {
    try {
      return use(keeping());
    } catch {
      return otherwise;
    }
  };
  return {
    read: (name) => parsed(unkept.get(name) ?? attempt((kept) => kept.getItem(name), null)),
    write: (name, value) => {
      const text = JSON.stringify(value);
      const isKept = attempt((kept) => (kept.setItem(name, text), true), false);
      if (isKept) unkept.delete(name);
      else unkept.set(name, text);
      return isKept;
    },
    remove: (name) => {
      unkept.delete(name);
      attempt((kept) => kept.removeItem(name), undefined);
    },
    names: (beginning) => {
      const kept = attempt(
        (storage) => Array.from({ length: storage.length }, (_, place) => storage.key(place) ?? ''),
        [],
      );
      return [...new Set([...kept, ...unkept.keys()])].filter((name) => name.startsWith(beginning));
    },
  };
}

/** Text that is no JSON was not written here: it counts as nothing. */
function parsed(text: string | null): unknown {
  try {
    return text === null ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
}

export const browserStore: Store = storeIn(() => localStorage);
