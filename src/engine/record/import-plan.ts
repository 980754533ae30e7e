/** What reading in a file of rows would do, as the server finds it and a screen shows it. */

/** Why none of a file's rows can be read. */
export type FileFault =
  | { readonly code: 'MISSING' }
  /** A file and pasted rows at once. */
  | { readonly code: 'TWO_SOURCES' }
  | { readonly code: 'EMPTY' }
  | { readonly code: 'TOO_LARGE'; readonly most: number }
  | { readonly code: 'TOO_MANY_ROWS'; readonly most: number }
  /** A workbook, which is a packed file. */
  | { readonly code: 'WORKBOOK' }
  /** `reads` is the line as an older program for Windows would have meant it. */
  | { readonly code: 'NOT_UTF8'; readonly line: number; readonly reads: string }
  | {
      readonly code: 'COLUMN_MISSING';
      readonly column: string;
      readonly found: readonly string[];
    }
  | { readonly code: 'COLUMN_TWICE'; readonly column: string }
  | { readonly code: 'QUOTE_OPEN'; readonly row: number };

/** What may be wrong with a cell of any file; each kind of file has codes of its own beside these. */
export type CellCode = 'MISSING' | 'WRONG' | 'MISREAD' | 'TOO_MANY_CELLS' | 'TWICE' | 'AMBIGUOUS';

/** `text` is what stands in the cell, `meant` what it probably should, `row` another row of the file. */
export type CellFault<Column extends string = string, Code extends string = string> = {
  readonly column: Column | null;
  readonly code: CellCode | Code;
  readonly text?: string;
  readonly meant?: string;
  readonly row?: number;
};

export type PlannedRow<Fault extends CellFault = CellFault> = {
  /** As a spreadsheet counts: the headings are row 1. */
  readonly row: number;
  /** What stands in the file, for telling the row. */
  readonly name: string;
  readonly state: 'new' | 'changed' | 'unchanged' | 'faulty';
  readonly faults: readonly Fault[];
};

export type ImportPlan<Row extends PlannedRow = PlannedRow> = {
  readonly rows: readonly Row[];
  /** Headings of columns that are not read. */
  readonly ignored: readonly string[];
  /** Of what it would do: the same plan has the same one. */
  readonly digest: string;
};
