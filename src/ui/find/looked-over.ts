import type { Store } from '#ui/attempts/browser-store.ts';

/** A wall that was looked over, as this browser remembers it. */
export type LookedOver = {
  readonly method: string;
  readonly seed: string;
  /** An instant in ISO 8601. */
  readonly at: string;
  readonly score: number;
  readonly found: number;
  readonly faults: number;
};

const drawer = 'find/';

/** The latest look at a wall takes the place of an earlier one. Whether the browser keeps it. */
export const keepLook = (store: Store, look: LookedOver): boolean =>
  store.write(`${drawer}${look.method}/${look.seed}`, look);

/** The latest first. */
export const allLooks = (store: Store): readonly LookedOver[] =>
  store
    .names(drawer)
    .map((name) => store.read(name))
    .filter(isLook)
    .toSorted((a, b) => b.at.localeCompare(a.at));

function isLook(found: unknown): found is LookedOver {
  if (typeof found !== 'object' || found === null) return false;
  const look = found as Readonly<Record<string, unknown>>;
  return (
    ['method', 'seed', 'at'].every((name) => typeof look[name] === 'string') &&
    Number.isFinite(Date.parse(String(look['at']))) &&
    ['score', 'found', 'faults'].every((name) => typeof look[name] === 'number')
  );
}
