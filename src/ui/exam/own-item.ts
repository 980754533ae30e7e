import type { SeenWall } from '#engine/inspection/seen-wall.ts';
import { fromText } from '#engine/compile/transport.ts';
import { type WallAnswer, wallAnswerFrom } from '#engine/marking/moves.ts';
import type { AskedProblem } from '#engine/takeoff/asked.ts';
import { type ProblemAnswer, problemAnswerFrom } from '#engine/takeoff/problem-answer.ts';
import type { Text } from '#engine/text.ts';
import type { Answer } from '#engine/written/answer.ts';
import { answerFrom } from '#engine/written/answer-from.ts';
import type { Posed } from '#engine/written/posed.ts';
import type { ShownWall } from './shown-wall.ts';

/** One item as the server shows it: nothing but what is asked. */
export type OwnItem = {
  readonly place: number;
  readonly key: string;
  readonly shown:
    | {
        readonly kind: 'question';
        readonly posed: Exclude<Posed, { readonly kind: 'find-fault' }>;
      }
    | { readonly kind: 'find-fault'; readonly ask: Text; readonly wall: SeenWall }
    | { readonly kind: 'problem'; readonly problem: AskedProblem }
    | { readonly kind: 'wall'; readonly wall: ShownWall }
    | undefined;
  /** The answer that counts so far, as it was given. */
  readonly given: string | undefined;
};

export const itemFrom = (text: string): OwnItem => fromText(text) as OwnItem;

/** Undefined where the server was not reached. */
export async function fetchItem(home: string, place: number): Promise<OwnItem | undefined> {
  try {
    const answer = await fetch(`${home}/items/${place}`, {
      headers: { accept: 'application/json' },
    });
    return answer.ok ? itemFrom(await answer.text()) : undefined;
  } catch {
    return undefined;
  }
}

export type OwnAnswer = Answer | ProblemAnswer | WallAnswer;

/** What was given before, where it still reads as an answer. */
export function answerIn(value: string | undefined): OwnAnswer | undefined {
  if (value === undefined) return undefined;
  try {
    const given: unknown = JSON.parse(value);
    const wall = wallAnswerFrom(given);
    if (wall.ok) return wall.value;
    const problem = problemAnswerFrom(given);
    if (problem.ok) return problem.value;
    const read = answerFrom(given);
    return read.ok ? read.value : undefined;
  } catch {
    return undefined;
  }
}
