/** The text of a roster file as rows, each with what it gives and everything that is wrong with it. */
import Papa from 'papaparse';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Language } from '#engine/text.ts';
import type { Role } from '../../access/roles.ts';
import { nameForm, numberForm } from '../names.ts';
import { emailForm } from '../person-form.ts';
import { type Column, columnOf, languageIn, rolesIn } from './columns.ts';
import { type FileFault, unmisread } from './decode.ts';
import { asWritten } from './harmless.ts';

export const mostRows = 10_000;

/** What a row says of somebody. What is empty or has no column is not in it. */
export type Given = {
  readonly name?: string;
  readonly number?: string;
  readonly crew?: string;
  readonly roles?: readonly Role[];
  readonly language?: Language;
  readonly email?: string;
};

/** `text` is what stands in the cell, `meant` what it probably should, `row` another row of the file. */
export type CellFault = {
  readonly column: Column | null;
  readonly code:
    | 'NAME_MISSING'
    | 'WRONG'
    | 'ROLE_UNKNOWN'
    | 'MISREAD'
    | 'TOO_MANY_CELLS'
    | 'TWICE'
    | 'AMBIGUOUS'
    | 'LAST_OFFICE';
  readonly text?: string;
  readonly meant?: string;
  readonly row?: number;
};

export type RosterRow = {
  /** As a spreadsheet counts: the headings are row 1. */
  readonly row: number;
  /** What stands in the name's cell, for telling the row. */
  readonly name: string;
  readonly given: Given;
  readonly faults: readonly CellFault[];
};

export type RosterRows = {
  readonly rows: readonly RosterRow[];
  /** Headings of columns that are not read. */
  readonly ignored: readonly string[];
};

const delimiters = [',', ';', '\t'] as const;

const cellsOf = (text: string, delimiter: string, preview = 0) =>
  Papa.parse<readonly string[]>(text, { delimiter, preview, skipEmptyLines: false });

/** The one between the headings that makes the most of them known. */
function delimiterOf(text: string): string {
  const known = (delimiter: string) =>
    (cellsOf(text, delimiter, 1).data[0] ?? []).filter((cell) => columnOf(cell)).length;
  return delimiters.reduce((best, next) => (known(next) > known(best) ? next : best));
}

/** Some spreadsheets write a first line that says what stands between the cells. */
const withoutPreface = (text: string): string =>
  text.replace(/^\uFEFF/, '').replace(/^"?sep=.?"?\r?\n/i, '');

export function rowsFrom(written: string): Result<RosterRows, FileFault> {
  const text = withoutPreface(written);
  if (text.trim() === '') return fault({ code: 'EMPTY' });
  const { data, errors } = cellsOf(text, delimiterOf(text));
  const open = errors.find(({ code }) => code === 'MissingQuotes');
  if (open) return fault({ code: 'QUOTE_OPEN', row: (open.row ?? 0) + 1 });
  const headings = (data[0] ?? []).map((heading) => heading.trim());
  const places = headings.map((heading) => columnOf(heading));
  const twice = places.find((column, index) => column && places.indexOf(column) !== index);
  if (twice) return fault({ code: 'COLUMN_TWICE', column: twice });
  if (!places.includes('name')) return fault({ code: 'NO_NAME_COLUMN', found: headings });
  const filled = data
    .map((cells, index) => ({ cells, row: index + 1 }))
    .slice(1)
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  if (filled.length > mostRows) return fault({ code: 'TOO_MANY_ROWS', most: mostRows });
  if (filled.length === 0) return fault({ code: 'EMPTY' });
  return ok({
    rows: filled.map(({ cells, row }) => rowFrom(cells, row, places)),
    ignored: headings.filter((heading, index) => heading !== '' && !places[index]),
  });
}

function rowFrom(
  cells: readonly string[],
  row: number,
  places: readonly (Column | undefined)[],
): RosterRow {
  const faults: CellFault[] = [];
  const given: { -readonly [Key in keyof Given]: Given[Key] } = {};
  const cellOf = (column: Column): string => {
    const place = places.indexOf(column);
    return place < 0 ? '' : asWritten((cells[place] ?? '').trim());
  };
  const read = <T>(column: Column, value: T | undefined, put: (value: T) => void): void => {
    const text = cellOf(column);
    if (text === '') return;
    const meant = unmisread(text);
    if (meant !== undefined) faults.push({ column, code: 'MISREAD', text, meant });
    else if (value === undefined) faults.push({ column, code: 'WRONG', text });
    else put(value);
  };
  const said = <T>(form: { safeParse: (text: string) => { data?: T } }, column: Column) =>
    form.safeParse(cellOf(column)).data;

  if (cellOf('name') === '') faults.push({ column: 'name', code: 'NAME_MISSING' });
  read('name', said(nameForm, 'name'), (name) => (given.name = name));
  read('number', said(numberForm, 'number'), (number) => (given.number = number));
  read('crew', said(nameForm, 'crew'), (crew) => (given.crew = crew));
  const held = rolesIn(cellOf('roles'));
  if ('unknown' in held) faults.push({ column: 'roles', code: 'ROLE_UNKNOWN', text: held.unknown });
  else if (held.length > 0) given.roles = held;
  read('language', languageIn(cellOf('language')), (language) => (given.language = language));
  read('email', said(emailForm, 'email'), (email) => (given.email = email));
  const extra = cells.slice(places.length).find((cell) => cell.trim() !== '');
  if (extra !== undefined)
    faults.push({ column: null, code: 'TOO_MANY_CELLS', text: extra.trim() });
  return { row, name: cellOf('name'), given, faults };
}
