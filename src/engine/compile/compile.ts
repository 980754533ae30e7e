import type { DataSheet } from '#engine/method/data-sheet.ts';
import type { DataSheetId } from '#engine/method/method.ts';
import type { Topic } from '#engine/written/topic.ts';
import { check } from './check.ts';
import type { Content } from './content.ts';
import { chainFrom, draftSheets, type SheetDrafts } from './data-sheet.ts';
import { draftFamilies } from './draft-family.ts';
import { inReadingOrder, type Diagnostic } from './diagnostic.ts';
import type { ContentFile } from './files.ts';
import type { Opened } from './opened.ts';
import { readFiles, type Written } from './read-files.ts';
import { revisionOf } from './revision.ts';
import { soundSchemes } from './scheme/sound-schemes.ts';
import type { SourceFile } from './source-file.ts';
import { draftTopics } from './written/draft-topic.ts';

export type Compiled = {
  /** What is right: files without a fault that name only things in files without a fault. */
  readonly content: Content;
  /** In reading order; none where everything is right. */
  readonly diagnostics: readonly Diagnostic[];
};

/** Compiles all the files of a content folder together. */
export function compile(files: readonly ContentFile[]): Compiled {
  const written = readFiles(files);
  const drafts = draftSheets(written.sheets);
  check(written, drafts);
  const families = draftFamilies(written.takeoffs, drafts, written.sheetIds);
  const topics = draftTopics(written, drafts);
  return {
    content: contentOf(written, drafts, families, topics),
    diagnostics: written.files.flatMap(({ faults }) => faults).toSorted(inReadingOrder),
  };
}

type Families = ReturnType<typeof draftFamilies>;
type Topics = ReturnType<typeof draftTopics>;

function contentOf(
  written: Written,
  drafts: SheetDrafts,
  families: Families,
  topics: Topics,
): Content {
  const { sources, hazards, glossary, sheets, methods, takeoffs, patterns } = written;
  const isCited = sources !== undefined && isSound(sources);
  const isSafe = isCited && hazards !== undefined && isSound(hazards);
  const soundSheets = new Map(
    [...drafts.values()].flatMap((draft) => {
      const chain = chainFrom(draft.id, sheets).map((id) => sheets.get(id));
      const right = isCited && chain.every((sheet) => sheet && isSound(sheet));
      return right ? [[draft.id, draft as DataSheet] as const] : [];
    }),
  );
  const soundMethods = [...methods].flatMap(([id, method]) =>
    isSafe && isSound(method) && soundSheets.has(method.value.dataSheet)
      ? [[id, method.value] as const]
      : [],
  );
  const soundFamilies = [...takeoffs].flatMap(([id, takeoff]) => {
    const family = families.get(id);
    const isRight = isCited && isSound(takeoff) && family && soundSheets.has(family.dataSheet);
    return isRight ? [[id, family] as const] : [];
  });
  const methodIds = new Set<string>(soundMethods.map(([id]) => id));
  const soundTopics = [...written.topics].flatMap(([id, opened]) => {
    const topic = topics.get(id);
    const isWhole = topic?.questions.length === opened.value.questions.length;
    const isRight = isCited && isSound(opened) && isWhole && restsOn(topic, methodIds, soundSheets);
    return isRight ? [[id, topic] as const] : [];
  });
  const soundGroups = [...glossary].flatMap(([id, group]) =>
    isCited && isSound(group) ? [[id, group.value] as const] : [],
  );
  const methodsById = new Map(soundMethods);
  const familiesById = new Map(soundFamilies);
  return {
    methods: methodsById,
    takeoffs: familiesById,
    schemes: isCited ? soundSchemes(written.schemes, methodsById, familiesById) : new Map(),
    topics: new Map(soundTopics),
    patterns: patterns && isSound(patterns) ? patterns.value : undefined,
    dataSheets: soundSheets,
    sources: new Map(isCited ? sources.value.map((source) => [source.id, source]) : []),
    hazards: new Map(isSafe ? hazards.value.map((hazard) => [hazard.id, hazard]) : []),
    glossary: new Map(soundGroups),
    revision: revisionOf(textOf(written.files)),
    sheetRevisions: new Map([...soundSheets.keys()].map((id) => [id, sheetRevision(id, sheets)])),
  };
}

/** Whether all that its questions name is right. */
const restsOn = (
  { questions }: Topic,
  methods: ReadonlySet<string>,
  sheets: ReadonlyMap<DataSheetId, DataSheet>,
): boolean =>
  questions.every(
    (question) =>
      sheets.has(question.dataSheet) &&
      question.of.every(({ method }) => methods.has(method)) &&
      (question.kind !== 'find-fault' || methods.has(question.method)),
  );

const isSound = ({ file }: Opened<unknown>): boolean => file.faults.length === 0;

function sheetRevision(id: DataSheetId, sheets: Written['sheets']): string {
  const chain = chainFrom(id, sheets).flatMap((each) => sheets.get(each)?.file ?? []);
  return revisionOf(textOf(chain));
}

/** No file can say what stands in it so that two other files would read the same. */
const textOf = (files: readonly SourceFile[]): string =>
  files.map(({ path, text }) => `${path}\0${text}\0`).join('');
