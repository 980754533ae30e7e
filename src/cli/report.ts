import type { Diagnostic } from '#engine/compile/diagnostic.ts';

/** A fault as a person reads it: where, what, the line itself with the place marked, and the cure. */
export function report(fault: Diagnostic): string {
  const { file, line, column, length, code, message, sourceLine, cure } = fault;
  const number = String(line);
  const margin = ' '.repeat(number.length);
  // A tab before the place stays one, so that the mark stands below whatever width it has.
  const indent = sourceLine.slice(0, column - 1).replace(/[^\t]/gu, ' ');
  return [
    `${file}:${line}:${column}  ${code}`,
    `  ${message}`,
    `  ${number} | ${sourceLine}`,
    `  ${margin} | ${indent}${'^'.repeat(length)}`,
    `  ${cure}`,
    '',
    '',
  ].join('\n');
}

export function tally(faults: readonly Diagnostic[]): string {
  if (faults.length === 0) return 'No faults.\n';
  const files = new Set(faults.map(({ file }) => file)).size;
  return `${count(faults.length, 'fault')} in ${count(files, 'file')}.\n`;
}

const count = (number: number, what: string): string =>
  `${number} ${what}${number === 1 ? '' : 's'}`;
