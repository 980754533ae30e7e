/** The text of a roster file as rows, each with what it gives and everything that is wrong with it. */
import type { CellFault, FileFault } from '#engine/record/import-plan.ts';
import { ok, type Result } from '#engine/result.ts';
import type { Language } from '#engine/text.ts';
import type { Role } from '../../access/roles.ts';
import { misreadIn, tableFrom, type TableRow } from '../../import/read-table.ts';
import { nameForm, numberForm } from '../names.ts';
import { emailForm } from '../person-form.ts';
import { type Column, languageIn, rolesIn, rosterColumns } from './columns.ts';

/** What a row says of somebody. What is empty or has no column is not in it. */
export type Given = {
  readonly name?: string;
  readonly number?: string;
  readonly crew?: string;
  readonly roles?: readonly Role[];
  readonly language?: Language;
  readonly email?: string;
};

export type RosterFault = CellFault<Column, 'ROLE_UNKNOWN' | 'LAST_OFFICE'>;

export type RosterRow = {
  /** As a spreadsheet counts: the headings are row 1. */
  readonly row: number;
  /** What stands in the name's cell, for telling the row. */
  readonly name: string;
  readonly given: Given;
  readonly faults: readonly RosterFault[];
};

export type RosterRows = {
  readonly rows: readonly RosterRow[];
  /** Headings of columns that are not read. */
  readonly ignored: readonly string[];
};

export function rowsFrom(written: string): Result<RosterRows, FileFault> {
  const table = tableFrom(written, rosterColumns, [['name']]);
  if (!table.ok) return table;
  return ok({ ...table.value, rows: table.value.rows.map(rowFrom) });
}

function rowFrom({ row, cellOf, extra }: TableRow<Column>): RosterRow {
  const faults: RosterFault[] = [];
  const given: { -readonly [Key in keyof Given]: Given[Key] } = {};
  const read = <T>(column: Column, value: T | undefined, put: (value: T) => void): void => {
    const text = cellOf(column);
    if (text === '') return;
    const misread = misreadIn(column, text);
    if (misread) faults.push(misread);
    else if (value === undefined) faults.push({ column, code: 'WRONG', text });
    else put(value);
  };
  const said = <T>(form: { safeParse: (text: string) => { data?: T } }, column: Column) =>
    form.safeParse(cellOf(column)).data;

  if (cellOf('name') === '') faults.push({ column: 'name', code: 'MISSING' });
  read('name', said(nameForm, 'name'), (name) => (given.name = name));
  read('number', said(numberForm, 'number'), (number) => (given.number = number));
  read('crew', said(nameForm, 'crew'), (crew) => (given.crew = crew));
  const held = rolesIn(cellOf('roles'));
  if ('unknown' in held) faults.push({ column: 'roles', code: 'ROLE_UNKNOWN', text: held.unknown });
  else if (held.length > 0) given.roles = held;
  read('language', languageIn(cellOf('language')), (language) => (given.language = language));
  read('email', said(emailForm, 'email'), (email) => (given.email = email));
  return { row, name: cellOf('name'), given, faults: [...faults, ...extra] };
}
