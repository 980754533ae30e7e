import { isMap, isScalar, isSeq, parseDocument, type Node } from 'yaml';
import type { Diagnostic, DiagnosticCode } from './diagnostic.ts';

/** A stretch of a file, in UTF-16 units from its start; `to` is not included. */
export type Place = { readonly from: number; readonly to: number };

/** The keys and indices that lead from the root of a file to a node. */
export type Path = readonly (string | number)[];

/** A parsed file, which gathers its own faults. */
export type SourceFile = {
  readonly path: string;
  readonly text: string;
  /** Whether it is YAML; otherwise its faults of syntax are all that is said about it. */
  readonly isYaml: boolean;
  /** Nothing where the file is empty. */
  readonly root: Node | undefined;
  readonly fault: (code: DiagnosticCode, place: Place, message: string, cure: string) => void;
  readonly faults: readonly Diagnostic[];
};

/** Line ends and a byte order mark carry no meaning, and do not count in a revision. */
export const normalText = (text: string): string =>
  text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');

/** Every plain value stays the text it was written as, so that `3/2` and `1.50` keep their digits. */
export function openSource(path: string, written: string): SourceFile {
  const text = normalText(written);
  // The reader finds a key that stands twice.
  const parsed = parseDocument(text, {
    schema: 'failsafe',
    prettyErrors: false,
    uniqueKeys: false,
  });
  const broken = [...parsed.errors, ...parsed.warnings];
  const isYaml = broken.length === 0;
  const file = { ...strayFile(path, text), isYaml, root: parsed.contents ?? undefined };
  for (const { message, pos } of broken) {
    file.fault('YAML_SYNTAX', { from: pos[0], to: pos[1] }, message, syntaxCure(message));
  }
  return file;
}

/** A file that is not read as YAML. */
export function strayFile(path: string, text: string): SourceFile {
  const faults: Diagnostic[] = [];
  const fault: SourceFile['fault'] = (code, place, message, cure) => {
    faults.push({ code, file: path, ...position(text, place), message, cure });
  };
  return { path, text, isYaml: false, root: undefined, fault, faults };
}

function position(
  text: string,
  { from, to }: Place,
): Pick<Diagnostic, 'line' | 'column' | 'length' | 'sourceLine'> {
  const start = text.lastIndexOf('\n', from - 1) + 1;
  const end = text.indexOf('\n', start);
  const sourceLine = text.slice(start, end < 0 ? undefined : end);
  const column = from - start + 1;
  const length = Math.max(1, Math.min(to - from, sourceLine.length - column + 1));
  return { line: text.slice(0, start).split('\n').length, column, length, sourceLine };
}

const syntaxCure = (message: string): string =>
  /tag/i.test(message)
    ? 'Content needs no tags; put a text that starts with "!" in quotes.'
    : 'Indent with spaces, and put a text that holds ": ", " #", or in braces a comma, in quotes.';

export const isEmpty = (node: Node | null | undefined): boolean =>
  !node || (isScalar(node) && node.value === '' && node.type === 'PLAIN');

export const placeOf = (node: Node): Place => ({
  from: node.range?.[0] ?? 0,
  to: node.range?.[1] ?? 0,
});

/** The value at the end of a path, or as much of the path as was written: a key, where it has no one-line value. */
export function placeAt(file: SourceFile, path: Path): Place {
  const { key, value } = walk(file, path);
  return value && isScalar(value) && !isEmpty(value) ? placeOf(value) : key;
}

/** The key that names the entry at the end of a path. */
export const keyAt = (file: SourceFile, path: Path): Place => walk(file, path).key;

function walk(
  file: SourceFile,
  path: Path,
): { readonly key: Place; readonly value: Node | undefined } {
  let value = file.root;
  let key: Place = { from: 0, to: 1 };
  for (const part of path) {
    if (isMap<Node, Node>(value)) {
      const pair = value.items.find((item) => isScalar(item.key) && item.key.value === part);
      if (!pair) return { key, value: undefined };
      key = placeOf(pair.key);
      value = pair.value ?? undefined;
    } else if (isSeq<Node>(value) && typeof part === 'number' && value.items[part]) {
      value = value.items[part];
      key = placeOf(value);
    } else return { key, value: undefined };
  }
  return { key, value };
}
