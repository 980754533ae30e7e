import type { Declared } from '#engine/record/declared.ts';
import type { PlannedRow } from '#engine/record/import-plan.ts';
import type { Column } from '#ui/board/board-row.ts';
import { titleIn } from '#ui/board/title-in.ts';
import type { ImportWords } from '#ui/import/import-words.ts';
import { m } from '#ui/messages/generated/messages.js';
import { daysWords, issuedWords } from './declared-words.ts';

/** A row of a file of certificates, as the server tells it. */
export type DeclaredPlanRow = PlannedRow & {
  /** Null where a cell of it cannot be used. */
  readonly given: Omit<Declared, 'id' | 'madeAt'> | null;
};

const fields: Readonly<Record<string, () => string>> = {
  person: m.declared_field_person,
  personNumber: m.declared_field_person_number,
  account: m.declared_field_account,
  title: m.declared_field_title,
  issuer: m.declared_field_issuer,
  number: m.declared_field_number,
  scheme: m.declared_field_scheme,
  issuedOn: m.declared_issued_on,
  validUntil: m.declared_field_until,
};

const wrong: ImportWords<DeclaredPlanRow>['wrong'] = {
  MISSING: ({ column }) =>
    column === 'person' ? m.declared_cell_nobody() : m.import_cell_missing(),
  WRONG: ({ text }) => m.declared_cell_wrong({ text }),
  NOT_A_DAY: ({ text }) => m.declared_cell_day({ text }),
  AHEAD: ({ text }) => m.declared_cell_ahead({ text }),
  BEFORE_ISSUE: ({ text }) => m.declared_cell_before({ text }),
  UNKNOWN_SCHEME: ({ text }) => m.declared_cell_scheme({ text }),
  UNKNOWN: ({ text }) => m.declared_cell_unknown({ text }),
  CONTRADICTED: ({ text }) => m.declared_cell_contradicted({ text }),
  AMBIGUOUS: () => m.declared_cell_ambiguous(),
  TWICE: ({ row }) => m.declared_cell_twice({ row }),
  KEPT_OTHERWISE: () => m.declared_cell_otherwise(),
};

export const declaredFileWords = (columns: readonly Column[]): ImportWords<DeclaredPlanRow> => ({
  states: ['faulty', 'new', 'unchanged'],
  field: (column) => fields[column]?.() ?? column,
  wrong,
  does: ({ given }) =>
    given === null
      ? []
      : [
          `${issuedWords(given)}; ${daysWords(given)}`,
          ...(given.scheme === null
            ? []
            : [m.declared_nearest({ title: titleIn(columns, given.scheme) })]),
        ],
});
