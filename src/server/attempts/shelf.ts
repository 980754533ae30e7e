/**
 * What marking builds from the content for every attempt, kept once it is built: the sequence of each wall
 * and the take-off of each family. No more than the content has of either, and let go with it.
 */
import type { Content } from '#engine/compile/content.ts';
import type { Shelf } from '#engine/marking/attempt-from.ts';
import { sequenceOf } from '#engine/method/sequence.ts';
import type { FamilyId } from '#engine/takeoff/family.ts';
import { type Takeoff, takeoffOf } from '#engine/takeoff/takeoff.ts';

type StockedShelf = Shelf & {
  /** Undefined where there is no such family, or its sheet does not fit. */
  readonly takeoffOf: (family: string) => Takeoff | undefined;
};

const shelves = new WeakMap<Content, StockedShelf>();

export function shelfOf(content: Content): StockedShelf {
  const shelf = shelves.get(content) ?? stocked(content);
  shelves.set(content, shelf);
  return shelf;
}

function stocked({ methods, dataSheets, takeoffs }: Content): StockedShelf {
  const sequences = new Map<string, ReturnType<typeof sequenceOf>>();
  const families = new Map<string, Takeoff | undefined>();
  return {
    methods,
    dataSheets,
    sequenceOf: (method, sheet, site) => {
      const answers = method.site.map(({ id }) => site[id]);
      const key = JSON.stringify([method.id, sheet.id, ...answers]);
      const found = sequences.get(key) ?? sequenceOf(method, sheet, site);
      sequences.set(key, found);
      return found;
    },
    takeoffOf: (id) => {
      if (families.has(id)) return families.get(id);
      const family = takeoffs.get(id as FamilyId);
      const sheet = family && dataSheets.get(family.dataSheet);
      if (!sheet) return undefined;
      const found = takeoffOf(family, sheet);
      const takeoff = found.ok ? found.value : undefined;
      families.set(id, takeoff);
      return takeoff;
    },
  };
}
