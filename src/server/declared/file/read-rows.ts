/** The text of a file of certificates as rows, each with everything that is wrong with it by itself. */
import type { CellFault, FileFault } from '#engine/record/import-plan.ts';
import { ok, type Result } from '#engine/result.ts';
import { type Text, languages } from '#engine/text.ts';
import { misreadIn, tableFrom, type TableRow } from '../../import/read-table.ts';
import { folded } from '../../people/folded.ts';
import {
  type FieldFault,
  type GivenDeclared,
  type ReadDeclared,
  readDeclared,
} from '../declared-form.ts';
import { type Column, columns, declaredColumns, type WhoColumn, whoColumns } from './columns.ts';

/** `UNKNOWN`: nobody is known by it. `CONTRADICTED`: another cell says somebody else. `KEPT_OTHERWISE`: it stands written down with another last day or qualification. */
export type DeclaredCellFault = CellFault<
  Column,
  Exclude<FieldFault['code'], 'WRONG'> | 'UNKNOWN' | 'CONTRADICTED' | 'KEPT_OTHERWISE'
>;

export type DeclaredRow = {
  readonly row: number;
  /** What stands in the file of whom it is about and what it is. */
  readonly name: string;
  readonly who: Readonly<Record<WhoColumn, string>>;
  /** Null where a cell of it cannot be used. */
  readonly given: ReadDeclared | null;
  readonly faults: readonly DeclaredCellFault[];
};

export type DeclaredRows = {
  readonly rows: readonly DeclaredRow[];
  readonly ignored: readonly string[];
};

export type Qualification = { readonly id: string; readonly title: Text };

type Rules = { readonly schemes: readonly Qualification[]; readonly today: string };

const needed = ['title', 'issuer', 'issuedOn'] as const;

export function rowsFrom(written: string, rules: Rules): Result<DeclaredRows, FileFault> {
  const table = tableFrom(written, declaredColumns, [
    whoColumns,
    ...needed.map((column) => [column] as const),
  ]);
  if (!table.ok) return table;
  const ids = rules.schemes.map(({ id }) => id);
  const idOf = new Map(rules.schemes.map(({ id }) => [folded(id), id]));
  for (const { id, title } of rules.schemes) {
    for (const language of languages) idOf.set(folded(title[language]), id);
  }
  const schemeIn = (cell: string) => idOf.get(folded(cell)) ?? cell;
  const read = (row: TableRow<Column>) =>
    rowFrom(row, schemeIn, { schemes: ids, today: rules.today });
  return ok({ ...table.value, rows: table.value.rows.map(read) });
}

function rowFrom(
  { row, cellOf, extra }: TableRow<Column>,
  schemeIn: (cell: string) => string,
  rules: Parameters<typeof readDeclared>[1],
): DeclaredRow {
  const cells: GivenDeclared = {
    title: cellOf('title'),
    issuer: cellOf('issuer'),
    number: cellOf('number'),
    scheme: cellOf('scheme'),
    issuedOn: cellOf('issuedOn'),
    validUntil: cellOf('validUntil'),
  };
  const read = readDeclared({ ...cells, scheme: schemeIn(cells.scheme) }, rules);
  const misread = columns.flatMap((column) => misreadIn(column, cellOf(column)) ?? []);
  const isMisread = (column: Column) => misread.some((fault) => fault.column === column);
  const faults: DeclaredCellFault[] = [
    ...misread,
    ...(read.ok ? [] : read.error)
      .filter(({ field }) => !isMisread(field))
      .map(({ field, code }): DeclaredCellFault => {
        const text = cells[field];
        return text === '' ? { column: field, code: 'MISSING' } : { column: field, code, text };
      }),
    ...extra,
  ];
  const who = {
    person: cellOf('person'),
    personNumber: cellOf('personNumber'),
    account: cellOf('account'),
  };
  const name = [who.person || who.personNumber || who.account, cells.title];
  return {
    row,
    name: name.filter(Boolean).join(': '),
    who,
    given: read.ok && faults.length === 0 ? read.value : null,
    faults,
  };
}
