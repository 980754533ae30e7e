import type { DataSheet } from '#engine/method/data-sheet.ts';
import type { SourceId } from '#engine/method/method.ts';
import type { Family } from '#engine/takeoff/family.ts';
import type { Content, Source } from './content.ts';

/** One family with all that it names, so that its screens need nothing else. */
export type TakeoffBundle = {
  readonly revision: string;
  readonly sheetRevision: string;
  readonly family: Family;
  readonly dataSheet: DataSheet;
  readonly sources: ReadonlyMap<SourceId, Source>;
};

/** Undefined where there is no such family. */
export function takeoffBundle(content: Content, id: string): TakeoffBundle | undefined {
  const family = [...content.takeoffs.values()].find((known) => known.id === id);
  const dataSheet = family && content.dataSheets.get(family.dataSheet);
  if (!family || !dataSheet) return undefined;
  const cited = new Set([
    family.source,
    ...[...dataSheet.numbers.values()].map(({ source }) => source),
  ]);
  return {
    revision: content.revision,
    sheetRevision: content.sheetRevisions.get(dataSheet.id) ?? content.revision,
    family,
    dataSheet,
    sources: new Map([...content.sources].filter(([source]) => cited.has(source))),
  };
}
