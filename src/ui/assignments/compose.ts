import type { Text } from '#engine/text.ts';
import type { DueSubject } from '#ui/due/due-list.ts';
import { m } from '#ui/messages/generated/messages.js';

/** One piece of work, with how many take-offs are to be right, or how many questions of a hundred. */
export type Piece = DueSubject & { readonly count: number; readonly pass?: number };

/** What was entered so far. */
export type Entered = {
  readonly title: string;
  readonly note: string;
  readonly opensDay: string;
  readonly dueDay: string;
  readonly tries: string;
  readonly pass: string;
  readonly pieces: readonly Piece[];
  readonly crews: readonly string[];
  readonly persons: readonly { readonly id: string; readonly name: string }[];
};

type Named = { readonly id: string; readonly name: Text };

export type MethodChoice = {
  readonly id: string;
  readonly title: Text;
  readonly site: readonly (Named & { readonly values: readonly Named[] })[];
};

export type TakeoffChoice = { readonly id: string; readonly title: Text };

export type TopicChoice = TakeoffChoice & { readonly questions: number };

export type Field =
  'title' | 'note' | 'opens' | 'due' | 'tries' | 'pass' | 'pieces' | 'crews' | 'persons';

export type Fault = {
  readonly field: Field;
  readonly code: 'EMPTY' | 'WRONG' | 'TOO_MANY' | 'TOO_LONG' | 'BEFORE' | 'UNKNOWN';
  readonly place?: number;
};

const words: Readonly<Record<Field, Partial<Record<Fault['code'], () => string>>>> = {
  title: { EMPTY: m.assign_title_empty, TOO_LONG: m.assign_title_long },
  note: { TOO_LONG: m.assign_note_long },
  opens: { WRONG: m.assign_day_wrong },
  due: { WRONG: m.assign_day_wrong, BEFORE: m.assign_due_before },
  tries: { WRONG: m.assign_tries_wrong },
  pass: { WRONG: m.assign_pass_wrong },
  pieces: {
    EMPTY: m.assign_pieces_empty,
    TOO_MANY: m.assign_pieces_many,
    UNKNOWN: m.assign_piece_unknown,
    WRONG: m.assign_right_wrong,
  },
  crews: {
    EMPTY: m.assign_for_empty,
    UNKNOWN: m.assign_crew_unknown,
    TOO_MANY: m.assign_for_many,
  },
  persons: { UNKNOWN: m.assign_person_unknown, TOO_MANY: m.assign_for_many },
};

/** What is wrong with a field, or with one of a list; undefined where nothing is. */
export function wrongWords(
  faults: readonly Fault[],
  field: Field,
  place?: number,
): string | undefined {
  const found = faults.find((one) => one.field === field && one.place === place);
  return found && (words[field][found.code] ?? m.assign_day_wrong)();
}
