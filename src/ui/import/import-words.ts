import type { CellFault, FileFault, PlannedRow } from '#engine/record/import-plan.ts';
import { m } from '#ui/messages/generated/messages.js';

/** How a kind of file speaks of its columns and rows. */
export type ImportWords<Row extends PlannedRow> = {
  /** Those that a row of it can be in, in the order in which they are told. */
  readonly states: readonly Row['state'][];
  readonly field: (column: string) => string;
  /** By code, what is wrong with a cell in a way that only this kind of file knows, or says better. */
  readonly wrong: Readonly<Record<string, (fault: Required<CellFault>) => string>>;
  /** What a sound row would do, a line each. */
  readonly does: (row: Row) => readonly string[];
};

const cellFaults: ImportWords<PlannedRow>['wrong'] = {
  MISSING: () => m.import_cell_missing(),
  MISREAD: ({ text, meant }) => m.import_cell_misread({ text, meant }),
  TOO_MANY_CELLS: ({ text }) => m.import_cell_too_many({ text }),
};

/** What is wrong with a cell, by its column, and how to mend it. */
export function cellFaultWords<Row extends PlannedRow>(
  fault: CellFault,
  { field, wrong }: ImportWords<Row>,
): string {
  const say = wrong[fault.code] ?? cellFaults[fault.code];
  const said = say?.({ text: '', meant: '', row: 0, ...fault }) ?? fault.code;
  return fault.column === null ? said : `${field(fault.column)}: ${said}`;
}

type Field = (column: string) => string;
type Say = {
  readonly [Code in FileFault['code']]: (fault: FileFault & { code: Code }, field: Field) => string;
};

const fileFaults: Say = {
  MISSING: () => m.import_file_missing(),
  TWO_SOURCES: () => m.import_file_two_sources(),
  EMPTY: () => m.import_file_empty(),
  TOO_LARGE: () => m.import_file_large(),
  TOO_MANY_ROWS: ({ most }) => m.import_file_rows({ count: most }),
  WORKBOOK: () => m.import_file_workbook(),
  NOT_UTF8: ({ line, reads }) => m.import_file_encoding({ line, reads }),
  COLUMN_MISSING: ({ column, found }, field) =>
    m.import_file_no_column({ column: field(column), found: found.join(' | ') }),
  COLUMN_TWICE: ({ column }, field) => m.import_file_twice({ column: field(column) }),
  QUOTE_OPEN: ({ row }) => m.import_file_quote({ row }),
};

/** Why a file cannot be read, and how to mend it. */
export function fileFaultWords(fault: FileFault | undefined, field: Field): string | undefined {
  // The table has a row for every code; which one it is only the fault knows.
  const say = fault && (fileFaults[fault.code] as (fault: FileFault, field: Field) => string);
  return say?.(fault!, field);
}
