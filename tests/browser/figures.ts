import { availableParallelism, cpus, loadavg } from 'node:os';

/** The value that a share of all does not exceed: the nearest rank. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? NaN;
}

export const median = (values: readonly number[]): number => quantile(values, 0.5);

/** Rows as columns of text, the first row as the head. */
export function tableOf(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, column) =>
    Math.max(...rows.map((row) => row[column]?.length ?? 0)),
  );
  const line = (row: readonly string[]) =>
    row
      .map((cell, column) =>
        column === 0 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0),
      )
      .join('  ')
      .trimEnd();
  return rows.map(line).join('\n');
}

/** What a figure was measured on, and what else the machine was doing. */
export const conditions = (browser: string): string =>
  [
    `Chromium ${browser}, Node ${process.version}`,
    `${availableParallelism()} cores (${cpus()[0]?.model.trim() ?? 'unknown'})`,
    `load ${loadavg()
      .map((load) => load.toFixed(1))
      .join(' ')}`,
    new Date().toISOString(),
  ].join(', ');
