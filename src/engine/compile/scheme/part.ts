import { isMap, isScalar, type Node } from 'yaml';
import {
  partKinds,
  passingOutcomes,
  type Part,
  type PartId,
  type PartKind,
  type SiteAnswers,
} from '#engine/exam/scheme.ts';
import type { MethodId } from '#engine/method/method.ts';
import { entries, record } from '#engine/compile/group.ts';
import { atLeastOne, list } from '#engine/compile/list.ts';
import { mapped, missingKey, optional, wrongShape, type Reader } from '#engine/compile/reader.ts';
import { choiceOf, idOf, oneOf, text } from '#engine/compile/words.ts';
import { timeAllowed } from './period.ts';
import { count, share } from './share.ts';

type Unnamed<P> = P extends Part ? Omit<P, 'id'> : never;

const answers: Reader<SiteAnswers> = mapped(
  entries(idOf('value'), 'site questions, each with a value'),
  (found) => Object.fromEntries(found),
);

const sites: Reader<'random' | readonly SiteAnswers[]> = {
  blank: 'random',
  read: (here) =>
    isScalar(here.node) && here.node.value === 'random'
      ? 'random'
      : atLeastOne(list(answers, 'sites, or the word random'), 'site').read(here),
};

export const blueprint = mapped(
  atLeastOne(entries(count, 'topics, each with a number of questions'), 'topic'),
  (found) => new Map(found),
);

const examiners: Reader<1 | 2> = {
  blank: 1,
  read: (here) => {
    const found = count.read(here);
    if (found > 2) wrongShape(here, '1 or 2', 'Write 1 or 2.');
    return found === 1 ? 1 : 2;
  },
};

const ofAny = {
  kind: oneOf(partKinds, 'UNKNOWN_PART_KIND', 'kind of part'),
  title: text,
  evidences: text,
  'pass-mark': share,
  time: timeAllowed,
};

const written = record({ ...ofAny, blueprint });

const takeoff = record({
  ...ofAny,
  families: atLeastOne(list(idOf('family'), 'families of problems'), 'family'),
  count,
});

const mockUp = record({
  ...ofAny,
  method: idOf<MethodId>('method'),
  sites,
  builds: optional(count, 1),
  outcome: oneOf(passingOutcomes, 'UNKNOWN_OUTCOME', 'outcome that passes'),
});

const handsOn = record({
  ...ofAny,
  method: idOf<MethodId>('method'),
  site: answers,
  examiners,
  agreement: optional(share, undefined),
});

/** The keys that its kind has, and no other. */
const readers: { readonly [K in PartKind]: Reader<Unnamed<Extract<Part, { kind: K }>>> } = {
  written: mapped(written, ({ 'pass-mark': passMark, ...rest }) => ({
    ...rest,
    passMark,
    kind: 'written',
  })),
  takeoff: mapped(takeoff, ({ 'pass-mark': passMark, ...rest }) => ({
    ...rest,
    passMark,
    kind: 'takeoff',
  })),
  'mock-up': mapped(mockUp, ({ 'pass-mark': passMark, ...rest }) => ({
    ...rest,
    passMark,
    kind: 'mock-up',
  })),
  'hands-on': mapped(handsOn, ({ 'pass-mark': passMark, ...rest }) => ({
    ...rest,
    passMark,
    kind: 'hands-on',
  })),
};

const kind = choiceOf(partKinds, 'UNKNOWN_PART_KIND', 'kind of part');

/** Where its kind cannot be told, nothing else is said about it. */
const part: Reader<Unnamed<Part>> = {
  blank: readers.written.blank,
  read: (here) => {
    if (!isMap<Node, Node>(here.node)) {
      wrongShape(here, 'a part of the examination', 'Write its keys, indented under this.');
      return part.blank;
    }
    const stated = here.node.items.find(({ key }) => isScalar(key) && key.value === 'kind');
    if (!stated) {
      missingKey(here.file, here.name, 'kind');
      return part.blank;
    }
    const found = kind.read({ ...here, node: stated.value ?? undefined });
    return found ? readers[found].read(here) : part.blank;
  },
};

export const parts: Reader<readonly Part[]> = mapped(
  atLeastOne(entries(part, 'a group of parts, each under its id'), 'part'),
  (found) => found.map(([id, value]) => ({ ...value, id: id as PartId })),
);
