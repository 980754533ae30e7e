/** The text of a file as rows, whose cells are asked for by their column. */
import Papa from 'papaparse';
import type { CellFault, FileFault } from '#engine/record/import-plan.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { unmisread } from './decode.ts';
import { asWritten } from './harmless.ts';
import type { Columns } from './headings.ts';

export const mostRows = 10_000;

export type TableRow<Column extends string> = {
  /** As a spreadsheet counts: the headings are row 1. */
  readonly row: number;
  /** Empty where there is no such column. */
  readonly cellOf: (column: Column) => string;
  /** More cells than headings. */
  readonly extra: readonly CellFault<Column, never>[];
};

export type Table<Column extends string> = {
  readonly rows: readonly TableRow<Column>[];
  /** Headings of columns that are not read. */
  readonly ignored: readonly string[];
};

const delimiters = [',', ';', '\t'] as const;

const cellsOf = (text: string, delimiter: string, preview = 0) =>
  Papa.parse<readonly string[]>(text, { delimiter, preview, skipEmptyLines: false });

/** Some spreadsheets write a first line that says what stands between the cells. */
const withoutPreface = (text: string): string =>
  text.replace(/^\uFEFF/, '').replace(/^"?sep=.?"?\r?\n/i, '');

/** Of each of `needed`, one column must be there. */
export function tableFrom<Column extends string>(
  written: string,
  { columnOf }: Columns<Column>,
  needed: readonly (readonly [Column, ...Column[]])[],
): Result<Table<Column>, FileFault> {
  const text = withoutPreface(written);
  if (text.trim() === '') return fault({ code: 'EMPTY' });
  /** The one between the headings that makes the most of them known. */
  const known = (delimiter: string) =>
    (cellsOf(text, delimiter, 1).data[0] ?? []).filter((cell) => columnOf(cell)).length;
  const delimiter = delimiters.reduce((best, next) => (known(next) > known(best) ? next : best));
  const { data, errors } = cellsOf(text, delimiter);
  const open = errors.find(({ code }) => code === 'MissingQuotes');
  if (open) return fault({ code: 'QUOTE_OPEN', row: (open.row ?? 0) + 1 });
  const headings = (data[0] ?? []).map((heading) => heading.trim());
  const places = headings.map((heading) => columnOf(heading));
  const twice = places.find((column, index) => column && places.indexOf(column) !== index);
  if (twice) return fault({ code: 'COLUMN_TWICE', column: twice });
  const missing = needed.find((some) => !some.some((column) => places.includes(column)));
  if (missing) return fault({ code: 'COLUMN_MISSING', column: missing[0], found: headings });
  const filled = data
    .map((cells, index) => ({ cells, row: index + 1 }))
    .slice(1)
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  if (filled.length > mostRows) return fault({ code: 'TOO_MANY_ROWS', most: mostRows });
  if (filled.length === 0) return fault({ code: 'EMPTY' });
  const placeOf = new Map(places.map((column, index) => [column, index]));
  return ok({
    rows: filled.map(({ cells, row }) => ({
      row,
      cellOf: (column) => asWritten((cells[placeOf.get(column) ?? -1] ?? '').trim()),
      extra: cells
        .slice(places.length)
        .filter((cell) => cell.trim() !== '')
        .slice(0, 1)
        .map((cell) => ({ column: null, code: 'TOO_MANY_CELLS', text: cell.trim() })),
    })),
    ignored: headings.filter((heading, index) => heading !== '' && !places[index]),
  });
}

/** What is wrong with a cell that some program has misread, with what was meant. */
export function misreadIn<Column extends string>(
  column: Column,
  text: string,
): CellFault<Column, never> | undefined {
  const meant = unmisread(text);
  return meant === undefined ? undefined : { column, code: 'MISREAD', text, meant };
}
