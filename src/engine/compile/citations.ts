import type { Scheme } from '#engine/exam/scheme.ts';
import type { HazardId, Method, SourceId } from '#engine/method/method.ts';
import type { Hazard, TermGroup } from './content.ts';
import type { WrittenSheet } from './data-sheet.ts';
import type { WrittenFamily } from './family.ts';
import { checkName } from './names.ts';
import type { Opened } from './opened.ts';
import type { Path } from './source-file.ts';

/** Where something is named, and what is named there. */
type Mention<Id> = readonly [path: Path, id: Id];

export function checkMentions<Id extends string>(
  { file, value }: Opened<readonly Mention<Id>[]>,
  code: 'UNKNOWN_SOURCE' | 'UNKNOWN_HAZARD',
  what: string,
  known: ReadonlySet<Id>,
): void {
  for (const [path, id] of value) checkName(file, code, path, what, id, known);
}

export const sourcesOfMethod = ({ steps, decoys }: Method): readonly Mention<SourceId>[] => [
  ...steps.map(({ id, source }) => [['steps', id, 'source'], source] as const),
  ...decoys.map(({ id, source }) => [['decoys', id, 'source'], source] as const),
];

export const hazardsOfMethod = ({ steps, decoys }: Method): readonly Mention<HazardId>[] => [
  ...steps.flatMap(({ id, hazards }) => hazardsOf(['steps', id], hazards)),
  ...decoys.flatMap(({ id, hazards }) => hazardsOf(['decoys', id], hazards)),
];

const hazardsOf = (path: Path, hazards: readonly HazardId[]): readonly Mention<HazardId>[] =>
  hazards.map((hazard, index) => [[...path, 'hazards', index], hazard] as const);

export const sourcesOfSheet = ({ numbers }: WrittenSheet['value']): readonly Mention<SourceId>[] =>
  numbers.flatMap(([id, { source }]) =>
    source === undefined ? [] : [[['numbers', id, 'source'], source] as const],
  );

export const sourcesOfFamily = ({ source }: WrittenFamily): readonly Mention<SourceId>[] => [
  [['source'], source],
];

export const sourcesOfScheme = ({ source }: Scheme): readonly Mention<SourceId>[] => [
  [['source'], source],
];

export const sourcesOfHazards = (hazards: readonly Hazard[]): readonly Mention<SourceId>[] =>
  hazards.map(({ id, source }) => [[id, 'source'], source] as const);

export const sourcesOfTerms = ({ terms }: TermGroup): readonly Mention<SourceId>[] =>
  [...terms.values()].map(({ id, source }) => [['terms', id, 'source'], source] as const);
