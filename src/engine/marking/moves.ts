/** What somebody does at a mock-up, one move after the other: a card put up, or a wait on its clock. */
import { isFields } from '#engine/fields.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { mostCards, type PlayedFile } from './attempt-file.ts';

export type Move =
  | { readonly card: string; readonly settings: Readonly<Record<string, string>> }
  | { readonly wait: number };

export const isWait = (move: Move): move is Extract<Move, { wait: number }> => 'wait' in move;

export type PlayedMove = PlayedFile & { readonly minute: number };

/** The cards put up, each with the reading of the clock at that moment. */
export function playedIn(moves: readonly Move[]): readonly PlayedMove[] {
  let minute = 0;
  return moves.flatMap((move) => {
    if (isWait(move)) {
      minute += move.wait;
      return [];
    }
    const { card: step, settings } = move;
    return [{ step, minute, ...(Object.keys(settings).length > 0 ? { settings } : {}) }];
  });
}

export const waitedIn = (moves: readonly Move[]): number =>
  moves.reduce((sum, move) => sum + (isWait(move) ? move.wait : 0), 0);

/** A wall as it stands so far, for an examination: every move that was made and not undone. */
export type WallAnswer = { readonly kind: 'wall'; readonly moves: readonly Move[] };

const longestText = 120;
/** Of one wait, in minutes: about two years. */
const longestWait = 1e6;

const isText = (value: unknown): boolean =>
  typeof value === 'string' && value.length <= longestText;

const isMove = (move: unknown): move is Move =>
  isFields(move) &&
  ('wait' in move
    ? typeof move['wait'] === 'number' && move['wait'] > 0 && move['wait'] <= longestWait
    : isText(move['card']) &&
      isFields(move['settings']) &&
      Object.values(move['settings']).every(isText));

/** The one door for it from outside. Whether its cards are on a bench is for `attemptFrom` to say. */
export function wallAnswerFrom(value: unknown): Result<WallAnswer, 'NOT_AN_ANSWER'> {
  if (!isFields(value) || value['kind'] !== 'wall') return fault('NOT_AN_ANSWER');
  const { moves } = value;
  if (!Array.isArray(moves) || !moves.every(isMove)) return fault('NOT_AN_ANSWER');
  const isLong = moves.filter((move) => !isWait(move)).length > mostCards;
  return isLong ? fault('NOT_AN_ANSWER') : ok({ kind: 'wall', moves });
}
