import type { DiagnosticCode } from './diagnostic.ts';
import { nearest } from './nearest.ts';
import { placeAt, type Path, type SourceFile } from './source-file.ts';

/** More than this many names are no help to read through. */
const manyNames = 24;

export function nearestCure(given: string, known: Iterable<string>): string {
  const names = [...known];
  const best = nearest(given, names);
  return best === undefined ? knownCure(names) : `Write "${best}", if that was meant.`;
}

function knownCure(known: readonly string[]): string {
  if (known.length === 0) return 'There are none yet: add one, or leave this out.';
  const shown = known.slice(0, manyNames).join(', ');
  return `Write one of: ${shown}${known.length > manyNames ? ', ...' : ''}.`;
}

type UnknownCode = Extract<DiagnosticCode, `UNKNOWN_${string}`>;

/** Reports a name that stands for nothing, unless it does. */
export function checkName(
  file: SourceFile,
  code: UnknownCode,
  path: Path,
  what: string,
  given: string,
  known: ReadonlySet<string>,
): void {
  // An empty name has had its own fault.
  if (given === '' || known.has(given)) return;
  file.fault(
    code,
    placeAt(file, path),
    `There is no ${what} "${given}".`,
    nearestCure(given, known),
  );
}
