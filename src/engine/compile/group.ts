import { isMap, isScalar, type Node, type Pair } from 'yaml';
import { nearestCure } from './names.ts';
import { nearest } from './nearest.ts';
import { missingKey, wrongShape, type Here, type Reader } from './reader.ts';
import { isEmpty, placeOf, type Place, type SourceFile } from './source-file.ts';

export type Entry<T> = readonly [id: string, value: T];

export type Fields = Readonly<Record<string, Reader<unknown>>>;
export type Read<F extends Fields> = {
  readonly [K in keyof F]: F[K] extends Reader<infer T> ? T : never;
};

/** A group of keys known beforehand. */
export function record<F extends Fields>(fields: F): Reader<Read<F>> {
  const known = Object.keys(fields);
  const blank = Object.fromEntries(known.map((key) => [key, fields[key]!.blank])) as Read<F>;
  const read = (here: Here): Read<F> => {
    const pairs = pairsIn(here, `a group of keys: ${known.join(', ')}`);
    if (!pairs) return blank;
    const found: Record<string, unknown> = { ...blank };
    const written = new Set<string>();
    for (const { key, name, node } of pairs) {
      const field = Object.hasOwn(fields, key) ? fields[key] : undefined;
      if (!field) unknownKey(here.file, name, key, known, node);
      else {
        written.add(key);
        found[key] = field.read({ file: here.file, name, node });
      }
    }
    for (const key of known) {
      if (!written.has(key) && !fields[key]!.optional) missingKey(here.file, here.name, key);
    }
    return found as Read<F>;
  };
  return { read, blank };
}

export function unknownKey(
  file: SourceFile,
  place: Place,
  key: string,
  known: readonly string[],
  value: Node | undefined,
): void {
  const cure =
    isEmpty(value) && (/\s/.test(key) || nearest(key, known) === undefined)
      ? 'Put the text before it in quotes: in braces, a comma ends a text that has none.'
      : nearestCure(key, known);
  file.fault('UNKNOWN_KEY', place, `"${key}" is not a key of this group.`, cure);
}

/** Ids, each with what it stands for, in the order written. */
export const entries = <T>(reader: Reader<T>, wanted: string): Reader<readonly Entry<T>[]> => ({
  blank: [],
  read: (here) =>
    (pairsIn(here, wanted) ?? []).map(({ key, name, node }) => {
      checkId(here.file, name, key);
      return [key, reader.read({ file: here.file, name, node })];
    }),
});

/** Words of a closed list, each with what it stands for. */
export const choices = <K extends string, T>(
  known: readonly K[],
  code: 'UNKNOWN_CONDITION' | 'UNKNOWN_MEASURE',
  what: string,
  readerOf: (key: K) => Reader<T>,
): Reader<ReadonlyMap<K, T>> => ({
  blank: new Map(),
  read: (here) => {
    const found = new Map<K, T>();
    for (const { key, name, node } of pairsIn(here, `a group of keys: ${known.join(', ')}`) ?? []) {
      const choice = known.find((word) => word === key);
      if (choice) found.set(choice, readerOf(choice).read({ file: here.file, name, node }));
      else here.file.fault(code, name, `"${key}" is not a ${what}.`, nearestCure(key, known));
    }
    return found;
  },
});

const idForm = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;

export function checkId(file: SourceFile, place: Place, id: string): void {
  if (idForm.test(id)) return;
  file.fault(
    'BAD_ID',
    place,
    `"${id}" is not an id.`,
    'Write small letters and digits in words joined by "-", the first a letter: turn-up-height.',
  );
}

type Written = { readonly key: string; readonly name: Place; readonly node: Node | undefined };

/** The pairs of a group, with a fault for each key that stands in it again. */
export function pairsIn(here: Here, wanted: string): readonly Written[] | undefined {
  if (!isMap<Node, Node>(here.node)) {
    wrongShape(here, wanted, 'Write "key: value" lines, indented under this, or { key: value }.');
    return undefined;
  }
  const seen = new Set<string>();
  return here.node.items.flatMap((pair) => {
    const written = keyOf(pair, here.file);
    if (!written) return [];
    const { key, name } = written;
    if (seen.has(key)) {
      const cure = 'Keep one of them, or give one another name.';
      here.file.fault('DUPLICATE_KEY', name, `"${key}" stands twice in this group.`, cure);
      return [];
    }
    seen.add(key);
    return [written];
  });
}

function keyOf(pair: Pair<Node, Node>, file: SourceFile): Written | undefined {
  const name = placeOf(pair.key);
  const node = pair.value ?? undefined;
  if (isScalar(pair.key)) return { key: String(pair.key.value), name, node };
  wrongShape({ file, node: pair.key, name }, 'a key', 'Write a plain word before the colon.');
  return undefined;
}
