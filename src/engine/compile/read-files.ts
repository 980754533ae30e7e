import type { Scheme, SchemeId } from '#engine/exam/scheme.ts';
import type { DataSheetId, Method, MethodId } from '#engine/method/method.ts';
import type { FamilyId } from '#engine/takeoff/family.ts';
import type { TopicId } from '#engine/written/question.ts';
import type { Hazard, Source, TermGroup, TermGroupId } from './content.ts';
import { writtenSheet, type WrittenSheet } from './data-sheet.ts';
import { writtenFamily, type WrittenFamily } from './family.ts';
import { fileAway, singleFiles, type ContentFile, type Filed } from './files.ts';
import { termGroup } from './glossary.ts';
import { hazards } from './hazards.ts';
import { method } from './method.ts';
import type { Opened } from './opened.ts';
import { checkId } from './group.ts';
import { readFile, type Reader } from './reader.ts';
import { scheme } from './scheme/scheme.ts';
import { openSource, strayFile, type SourceFile } from './source-file.ts';
import { sources } from './sources.ts';
import type { Patterns } from '#engine/written/patterns.ts';
import { patterns } from './written/patterns.ts';
import { writtenTopic, type WrittenTopic } from './written/topic.ts';

/** Everything that was written, file by file; a file that is no YAML is among `files` only. */
export type Written = {
  readonly files: readonly SourceFile[];
  readonly sources: Opened<readonly Source[]> | undefined;
  readonly hazards: Opened<readonly Hazard[]> | undefined;
  readonly glossary: ReadonlyMap<TermGroupId, Opened<TermGroup>>;
  readonly sheets: ReadonlyMap<DataSheetId, Opened<WrittenSheet['value']>>;
  readonly methods: ReadonlyMap<MethodId, Opened<Method>>;
  readonly takeoffs: ReadonlyMap<FamilyId, Opened<WrittenFamily>>;
  readonly schemes: ReadonlyMap<SchemeId, Opened<Scheme>>;
  readonly topics: ReadonlyMap<TopicId, Opened<WrittenTopic>>;
  readonly patterns: Opened<Patterns> | undefined;
  /** Here and below, those too that could not be read. */
  readonly sheetIds: ReadonlySet<DataSheetId>;
  readonly methodIds: ReadonlySet<MethodId>;
  readonly familyIds: ReadonlySet<FamilyId>;
  readonly topicIds: ReadonlySet<TopicId>;
  readonly schemeIds: ReadonlySet<SchemeId>;
};

type Placed = { readonly file: SourceFile; readonly filed: Filed };

export function readFiles(given: readonly ContentFile[]): Written {
  const placed = given
    .toSorted((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0))
    .flatMap(({ path, text }) => {
      const filed = fileAway(path);
      return filed.kind === 'ignored' ? [] : [{ file: openFiled(path, text, filed), filed }];
    });
  const missing = singleFiles
    .filter((name) => !placed.some(({ filed }) => filed.kind === name))
    .map(missingFile);
  const readAll = <Id extends string, T>(kind: Filed['kind'], readerOf: (id: Id) => Reader<T>) =>
    new Map(
      placed.flatMap(({ file, filed }) =>
        filed.kind === kind && 'id' in filed && file.isYaml
          ? [[filed.id as Id, { file, value: readFile(file, readerOf(filed.id as Id)) }] as const]
          : [],
      ),
    );
  return {
    files: [...missing, ...placed.map(({ file }) => file)],
    sources: readAll('sources', () => sources).get('sources'),
    hazards: readAll('hazards', () => hazards).get('hazards'),
    glossary: readAll('glossary', termGroup),
    sheets: readAll('data-sheets', () => writtenSheet),
    methods: readAll('methods', method),
    takeoffs: readAll('takeoffs', () => writtenFamily),
    schemes: readAll('schemes', scheme),
    topics: readAll('written', () => writtenTopic),
    patterns: readAll('patterns', () => patterns).get('patterns'),
    sheetIds: idsAmong<DataSheetId>(placed, 'data-sheets'),
    methodIds: idsAmong<MethodId>(placed, 'methods'),
    familyIds: idsAmong<FamilyId>(placed, 'takeoffs'),
    topicIds: idsAmong<TopicId>(placed, 'written'),
    schemeIds: idsAmong<SchemeId>(placed, 'schemes'),
  };
}

function openFiled(path: string, text: string, filed: Filed): SourceFile {
  if (filed.kind === 'stray') {
    const file = strayFile(path, text);
    file.fault(filed.code, { from: 0, to: Infinity }, filed.message, filed.cure);
    return file;
  }
  const file = openSource(path, text);
  if ('id' in filed) checkId(file, { from: 0, to: 1 }, filed.id);
  return file;
}

function missingFile(name: string): SourceFile {
  const file = strayFile(`${name}.yaml`, '');
  const message = `There is no file ${name}.yaml.`;
  const cure = `Add it, with the ${name} that the other files name.`;
  file.fault('MISSING_FILE', { from: 0, to: 1 }, message, cure);
  return file;
}

const idsAmong = <Id extends string>(
  placed: readonly Placed[],
  kind: Filed['kind'],
): ReadonlySet<Id> =>
  new Set(
    placed.flatMap(({ filed }) => (filed.kind === kind && 'id' in filed ? [filed.id as Id] : [])),
  );
