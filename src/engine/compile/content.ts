import type { Scheme, SchemeId } from '#engine/exam/scheme.ts';
import type { DataSheet } from '#engine/method/data-sheet.ts';
import type { DataSheetId, HazardId, Method, MethodId, SourceId } from '#engine/method/method.ts';
import type { Family, FamilyId } from '#engine/takeoff/family.ts';
import type { Language, Text } from '#engine/text.ts';
import type { Patterns } from '#engine/written/patterns.ts';
import type { TopicId } from '#engine/written/question.ts';
import type { Topic } from '#engine/written/topic.ts';

/** Everything that the trade knows, compiled. */
export type Content = {
  readonly methods: ReadonlyMap<MethodId, Method>;
  readonly takeoffs: ReadonlyMap<FamilyId, Family>;
  readonly schemes: ReadonlyMap<SchemeId, Scheme>;
  readonly topics: ReadonlyMap<TopicId, Topic>;
  /** Without them no question can be made from a method. */
  readonly patterns: Patterns | undefined;
  readonly dataSheets: ReadonlyMap<DataSheetId, DataSheet>;
  readonly sources: ReadonlyMap<SourceId, Source>;
  readonly hazards: ReadonlyMap<HazardId, Hazard>;
  readonly glossary: ReadonlyMap<TermGroupId, TermGroup>;
  /** Changes with any word of the content. */
  readonly revision: string;
  /** Each changes with any word of its data sheet, or of one that it starts from. */
  readonly sheetRevisions: ReadonlyMap<DataSheetId, string>;
};

/** How the figures of a source were read: in it, in another that quotes it, or from memory. */
export const readings = ['seen', 'secondary', 'memory'] as const;
export type Reading = (typeof readings)[number];

export type Source = {
  readonly id: SourceId;
  readonly title: string;
  /** Common practice has none. */
  readonly publisher: string | undefined;
  readonly clause: string | undefined;
  readonly year: number | undefined;
  readonly address: string | undefined;
  readonly read: Reading;
};

export type Hazard = {
  readonly id: HazardId;
  readonly name: Text;
  readonly caution: Text;
  readonly source: SourceId;
};

declare const idOf: unique symbol;
type Id<Kind extends string> = string & { readonly [idOf]: Kind };

export type TermGroupId = Id<'term group'>;
export type TermId = Id<'term'>;

export type TermGroup = {
  readonly id: TermGroupId;
  readonly title: Text;
  readonly terms: ReadonlyMap<TermId, Term>;
};

export type Term = {
  readonly id: TermId;
  readonly term: Text;
  readonly means: Text;
  /** Other words that people say for it. */
  readonly also: Readonly<Record<Language, readonly string[]>>;
  readonly see: readonly TermId[];
  readonly source: SourceId;
};
