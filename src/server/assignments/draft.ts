/** The one door for work that a trainer gives: right in every field, or every fault by its field. */
import type { Content } from '#engine/compile/content.ts';
import type { MethodId } from '#engine/method/method.ts';
import { siteFrom } from '#engine/method/site.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { FamilyId } from '#engine/takeoff/family.ts';
import { isUuid } from '#engine/uuid.ts';
import { mostInRun } from '#engine/written/kept-run.ts';
import type { TopicId } from '#engine/written/question.ts';
import type { Subject } from '../attempts/work.ts';

/** As it was entered. Instants in ISO 8601, numbers as written; what is empty is left open. */
export type Draft = {
  readonly title: string;
  readonly note: string;
  readonly opens: string;
  readonly due: string;
  readonly tries: string;
  /** Points of 100 that a wall takes. */
  readonly pass: string;
  readonly pieces: readonly Piece[];
  readonly crews: readonly string[];
  readonly persons: readonly string[];
};

/**
 * One piece of work, as it was picked; a take-off with how many are to be right, written questions with
 * how many of a hundred.
 */
export type Piece = Subject & { readonly count: number; readonly pass?: number };

export type DraftField = keyof Draft;

/**
 * `EMPTY`: it is needed. `WRONG`: it cannot be read, or lies outside what is allowed. `TOO_MANY`, `TOO_LONG`.
 * `BEFORE`: due before it opens. `UNKNOWN`: there is no such method, wall, family, topic, crew or person.
 */
export type DraftFault = {
  readonly field: DraftField;
  readonly code: 'EMPTY' | 'WRONG' | 'TOO_MANY' | 'TOO_LONG' | 'BEFORE' | 'UNKNOWN';
  /** Which of the list. */
  readonly place?: number;
};

export type Composed = Dates & {
  readonly title: string;
  readonly note: string | null;
  readonly works: readonly (Piece & { readonly pass: number })[];
  readonly crews: readonly string[];
  readonly persons: readonly string[];
};

export type Dates = {
  readonly opens: string;
  readonly due: string | null;
  readonly tries: number | null;
};

export const longestTitle = 120;
export const longestNote = 2000;
export const mostPieces = 12;
export const mostTries = 50;
/** Of one family. */
export const mostProblems = 50;
const mostCrews = 100;
const mostPersons = 200;

const tidy = (text: string): string => text.normalize('NFC').replace(/\r\n?/g, '\n').trim();

const instantFrom = (text: string): string | undefined => {
  const isInstant = /^\d{4}-\d\d-\d\dT[\d:.]+Z$/.test(text) && Number.isFinite(Date.parse(text));
  return isInstant ? new Date(text).toISOString() : undefined;
};

const countFrom = (text: string, most: number): number | undefined =>
  /^\d{1,4}$/.test(text.trim()) && Number(text) >= 1 && Number(text) <= most
    ? Number(text)
    : undefined;

/** Without an opening it is open from `at`. */
export function datesFrom(
  { opens, due, tries }: Pick<Draft, 'opens' | 'due' | 'tries'>,
  at: string,
): Result<Dates, readonly DraftFault[]> {
  const from = opens === '' ? at : instantFrom(opens);
  const until = due === '' ? null : instantFrom(due);
  const most = tries.trim() === '' ? null : countFrom(tries, mostTries);
  const isBefore = typeof from === 'string' && typeof until === 'string' && until <= from;
  const faults: DraftFault[] = [
    ...(from === undefined ? [{ field: 'opens', code: 'WRONG' } as const] : []),
    ...(until === undefined ? [{ field: 'due', code: 'WRONG' } as const] : []),
    ...(isBefore ? [{ field: 'due', code: 'BEFORE' } as const] : []),
    ...(most === undefined ? [{ field: 'tries', code: 'WRONG' } as const] : []),
  ];
  if (faults.length > 0 || from === undefined || until === undefined || most === undefined) {
    return fault(faults);
  }
  return ok({ opens: from, due: until, tries: most });
}

/** Whether the crews and people are there is for the records to say. */
export function composedFrom(
  content: Content,
  draft: Draft,
  at: string,
): Result<Composed, readonly DraftFault[]> {
  const [title, note] = [tidy(draft.title).replace(/\s+/g, ' '), tidy(draft.note)];
  const dates = datesFrom(draft, at);
  const pass = countFrom(draft.pass, 100);
  const [crews, persons] = [[...new Set(draft.crews)], [...new Set(draft.persons)]];
  const faults: DraftFault[] = [
    ...(title === '' ? [{ field: 'title', code: 'EMPTY' } as const] : []),
    ...(title.length > longestTitle ? [{ field: 'title', code: 'TOO_LONG' } as const] : []),
    ...(note.length > longestNote ? [{ field: 'note', code: 'TOO_LONG' } as const] : []),
    ...(dates.ok ? [] : dates.error),
    ...(pass === undefined ? [{ field: 'pass', code: 'WRONG' } as const] : []),
    ...pieceFaults(content, draft.pieces),
    ...forFaults(crews, persons),
  ];
  if (faults.length > 0 || !dates.ok || pass === undefined) return fault(faults);
  const works = draft.pieces.map((piece) => ({
    ...piece,
    pass: passOf(piece, pass),
  }));
  return ok({ ...dates.value, title, note: note === '' ? null : note, works, crews, persons });
}

/** A problem is right or it is not; of a topic it was said how much is to be right. */
function passOf(piece: Piece, ofWalls: number): number {
  if (piece.kind === 'takeoff') return 100;
  return piece.kind === 'written' ? (piece.pass ?? ofWalls) : ofWalls;
}

function pieceFaults(content: Content, pieces: readonly Piece[]): readonly DraftFault[] {
  if (pieces.length === 0) return [{ field: 'pieces', code: 'EMPTY' }];
  if (pieces.length > mostPieces) return [{ field: 'pieces', code: 'TOO_MANY' }];
  return pieces.flatMap((piece, place): readonly DraftFault[] => {
    if (!isThere(content, piece)) return [{ field: 'pieces', code: 'UNKNOWN', place }];
    const most = piece.kind === 'takeoff' ? mostProblems : 1;
    const isSound =
      countFrom(String(piece.count), most) !== undefined &&
      (piece.kind !== 'written' || isSoundRun(content, piece));
    return isSound ? [] : [{ field: 'pieces', code: 'WRONG', place }];
  });
}

function isSoundRun(
  { topics }: Content,
  { topic, questions, pass }: Extract<Piece, { readonly kind: 'written' }>,
): boolean {
  const most = Math.min(mostInRun, topics.get(topic as TopicId)?.questions.length ?? 0);
  const isPass = pass === undefined || countFrom(String(pass), 100) !== undefined;
  return countFrom(String(questions), most) !== undefined && isPass;
}

/** Whether today's content has it. */
function isThere({ methods, takeoffs, topics }: Content, piece: Subject): boolean {
  if (piece.kind === 'written') return topics.has(piece.topic as TopicId);
  if (piece.kind === 'takeoff') return takeoffs.has(piece.family as FamilyId);
  const method = methods.get(piece.method as MethodId);
  return method !== undefined && siteFrom(method.site, piece.site ?? {}).ok;
}

function forFaults(crews: readonly string[], persons: readonly string[]): readonly DraftFault[] {
  if (crews.length + persons.length === 0) return [{ field: 'crews', code: 'EMPTY' }];
  return [
    ...(crews.length > mostCrews ? [{ field: 'crews', code: 'TOO_MANY' } as const] : []),
    ...(crews.every(isUuid) ? [] : [{ field: 'crews', code: 'UNKNOWN' } as const]),
    ...(persons.length > mostPersons ? [{ field: 'persons', code: 'TOO_MANY' } as const] : []),
    ...(persons.every(isUuid) ? [] : [{ field: 'persons', code: 'UNKNOWN' } as const]),
  ];
}
