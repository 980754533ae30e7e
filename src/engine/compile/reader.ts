import { isAlias, isMap, isScalar, isSeq, type Node } from 'yaml';
import { isEmpty, placeOf, type Place, type SourceFile } from './source-file.ts';

/** Where a reader stands: a value, and what to point at when something in it is missing. */
export type Here = {
  readonly file: SourceFile;
  readonly node: Node | undefined;
  readonly name: Place;
};

/**
 * Makes a value of what is written. It reports every fault and goes on: `blank` stands where nothing
 * could be read. A file with faults never leaves the compiler, so neither does a blank.
 */
export type Reader<T> = {
  readonly read: (here: Here) => T;
  readonly blank: T;
  readonly optional?: true;
};

export const readFile = <T>(file: SourceFile, reader: Reader<T>): T =>
  reader.read({ file, node: file.root, name: { from: 0, to: 1 } });

export const optional = <T, A>(reader: Reader<T>, absent: A): Reader<T | A> => ({
  read: reader.read,
  blank: absent,
  optional: true,
});

export const mapped = <T, U>(reader: Reader<T>, make: (value: T) => U): Reader<U> => ({
  ...reader,
  read: (here) => make(reader.read(here)),
  blank: make(reader.blank),
});

export function wrongShape(here: Here, wanted: string, cure: string): void {
  const { file, node, name } = here;
  const place = node && !isEmpty(node) && !isMap(node) && !isSeq(node) ? placeOf(node) : name;
  file.fault('WRONG_SHAPE', place, `Here stands ${shapeOf(node)}, not ${wanted}.`, cure);
}

function shapeOf(node: Node | undefined): string {
  if (isEmpty(node)) return 'nothing';
  if (isMap(node)) return 'a group of keys';
  if (isSeq(node)) return 'a list';
  if (isScalar(node)) return `"${shortened(String(node.value))}"`;
  return isAlias(node) ? 'a reference to another place in the file' : 'something else';
}

const shortened = (value: string): string =>
  value.length > 40 ? `${value.slice(0, 39)}...` : value;

/** A key that the entry named there cannot do without. */
export const missingKey = (file: SourceFile, place: Place, key: string): void =>
  file.fault(
    'MISSING_KEY',
    place,
    `"${key}" is missing.`,
    `Add "${key}:" here; content/README.md shows its form.`,
  );
