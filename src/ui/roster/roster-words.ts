import { type RoleName, roleWord } from '#ui/account/role-words.ts';
import { m } from '#ui/messages/generated/messages.js';
import { languageName } from '#ui/people/language-words.ts';
import type { CellFault, PlanRow, RowChange } from './roster-plan.ts';

const fields: Readonly<Record<string, () => string>> = {
  name: m.people_name,
  number: m.people_number,
  crew: m.people_crew,
  roles: m.people_roles,
  language: m.people_language,
  email: m.people_email,
};

const fieldWord = (field: string): string => fields[field]?.() ?? field;

const valueWords = (field: string, value: string | null): string => {
  if (value === null || value === '') return m.roster_nothing();
  if (field === 'language') return languageName(value);
  if (field !== 'roles') return value;
  return value
    .split(' ')
    .map((role) => roleWord(role as RoleName))
    .join(', ');
};

/** What would change, in words: from what to what. */
export const changeWords = ({ field, from, to }: RowChange): string =>
  field === 'back'
    ? m.roster_comes_back()
    : m.roster_from_to({
        field: fieldWord(field),
        from: valueWords(field, from),
        to: valueWords(field, to),
      });

/** What a new row gives beside the name. */
export const givenWords = ({ given }: PlanRow): readonly string[] =>
  Object.keys(fields)
    .map((field) => {
      const value = (given as Readonly<Record<string, string | readonly string[] | undefined>>)[
        field
      ];
      return { field, text: typeof value === 'string' ? value : value?.join(' ') };
    })
    .filter(({ field, text }) => field !== 'name' && text !== undefined)
    .map(({ field, text = '' }) =>
      m.roster_set({ field: fieldWord(field), to: valueWords(field, text) }),
    );

const wrongCell: Readonly<Record<string, (said: { text: string }) => string>> = {
  name: m.roster_cell_wrong_name,
  number: m.roster_cell_wrong_number,
  crew: m.roster_cell_wrong_name,
  language: m.roster_cell_wrong_language,
  email: m.roster_cell_wrong_email,
};

const cellFaults: Readonly<Record<string, (fault: Required<CellFault>) => string>> = {
  NAME_MISSING: () => m.roster_cell_missing(),
  WRONG: ({ column, text }) => wrongCell[column ?? '']?.({ text }) ?? text,
  ROLE_UNKNOWN: ({ text }) => m.roster_cell_role({ text }),
  MISREAD: ({ text, meant }) => m.roster_cell_misread({ text, meant }),
  TOO_MANY_CELLS: ({ text }) => m.roster_cell_too_many({ text }),
  TWICE: ({ row }) => m.roster_cell_twice({ row }),
  AMBIGUOUS: () => m.roster_cell_ambiguous(),
  LAST_OFFICE: () => m.roster_cell_last_office(),
};

/** What is wrong with a cell, by its column, and how to mend it. */
export function cellFaultWords(fault: CellFault): string {
  const said = cellFaults[fault.code]?.({ text: '', meant: '', row: 0, ...fault }) ?? fault.code;
  return fault.column === null ? said : `${fieldWord(fault.column)}: ${said}`;
}

export type FileFault = {
  readonly code: string;
  readonly most?: number;
  readonly line?: number;
  readonly reads?: string;
  readonly found?: readonly string[];
  readonly column?: string;
  readonly row?: number;
};

const fileFaults: Readonly<Record<string, (fault: FileFault) => string>> = {
  MISSING: () => m.roster_file_missing(),
  EMPTY: () => m.roster_file_empty(),
  TOO_LARGE: () => m.roster_file_large(),
  TOO_MANY_ROWS: ({ most = 0 }) => m.roster_file_rows({ count: most }),
  WORKBOOK: () => m.roster_file_workbook(),
  NOT_UTF8: ({ line = 0, reads = '' }) => m.roster_file_encoding({ line, reads }),
  NO_NAME_COLUMN: ({ found = [] }) => m.roster_file_no_name({ found: found.join(' | ') }),
  COLUMN_TWICE: ({ column = '' }) => m.roster_file_twice({ column: fieldWord(column) }),
  QUOTE_OPEN: ({ row = 0 }) => m.roster_file_quote({ row }),
};

/** Why a file cannot be read, and how to mend it. */
export const fileFaultWords = (fault: FileFault | undefined): string | undefined =>
  fault && (fileFaults[fault.code]?.(fault) ?? fault.code);
