import type { DataSheet } from '#engine/method/data-sheet.ts';
import type { HazardId, Method, SourceId } from '#engine/method/method.ts';
import { among } from './among.ts';
import type { Content, Hazard, Source } from './content.ts';

/** One method with all that it names, so that its screens need nothing else. */
export type MethodBundle = {
  readonly revision: string;
  readonly sheetRevision: string;
  readonly method: Method;
  readonly dataSheet: DataSheet;
  readonly hazards: ReadonlyMap<HazardId, Hazard>;
  readonly sources: ReadonlyMap<SourceId, Source>;
};

/** Undefined where there is no such method. */
export function methodBundle(content: Content, id: string): MethodBundle | undefined {
  const method = [...content.methods.values()].find((known) => known.id === id);
  const dataSheet = method && content.dataSheets.get(method.dataSheet);
  if (!method || !dataSheet) return undefined;
  const hazards = among(content.hazards, hazardsOf(method));
  const cited = [
    ...[...method.steps, ...method.decoys].map(({ source }) => source),
    ...[...dataSheet.numbers.values()].map(({ source }) => source),
    ...[...hazards.values()].map(({ source }) => source),
  ];
  return {
    revision: content.revision,
    sheetRevision: content.sheetRevisions.get(dataSheet.id) ?? content.revision,
    method,
    dataSheet,
    hazards,
    sources: among(content.sources, cited),
  };
}

const hazardsOf = ({ steps, decoys }: Method): readonly HazardId[] =>
  [...steps, ...decoys].flatMap(({ hazards }) => hazards);
