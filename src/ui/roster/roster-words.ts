import { type RoleName, roleWord } from '#ui/account/role-words.ts';
import type { ImportWords } from '#ui/import/import-words.ts';
import { m } from '#ui/messages/generated/messages.js';
import { languageName } from '#ui/people/language-words.ts';
import type { PlanRow, RowChange } from './roster-plan.ts';

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
const changeWords = ({ field, from, to }: RowChange): string =>
  field === 'back'
    ? m.roster_comes_back()
    : m.roster_from_to({
        field: fieldWord(field),
        from: valueWords(field, from),
        to: valueWords(field, to),
      });

/** What a new row gives beside the name. */
const givenWords = ({ given }: PlanRow): readonly string[] =>
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

export const rosterWords: ImportWords<PlanRow> = {
  states: ['faulty', 'new', 'changed', 'unchanged'],
  field: fieldWord,
  wrong: {
    WRONG: ({ column, text }) => wrongCell[column ?? '']?.({ text }) ?? text,
    ROLE_UNKNOWN: ({ text }) => m.roster_cell_role({ text }),
    TWICE: ({ row }) => m.roster_cell_twice({ row }),
    AMBIGUOUS: () => m.roster_cell_ambiguous(),
    LAST_OFFICE: () => m.roster_cell_last_office(),
  },
  does: (row) => (row.state === 'new' ? givenWords(row) : row.changes.map(changeWords)),
};
