/**
 * Whether what was sent is an answer to what was asked, by its shape alone: what it says, and whether its
 * choices are on the form, is for the marking to read.
 */
import type { Content } from '#engine/compile/content.ts';
import { attemptFrom } from '#engine/marking/attempt-from.ts';
import { wallAnswerFrom } from '#engine/marking/moves.ts';
import { problemAnswerFrom } from '#engine/takeoff/problem-answer.ts';
import { answerFrom } from '#engine/written/answer-from.ts';
import { shelfOf } from '../attempts/shelf.ts';
import { attemptFileFor, wallFor } from './mock-up-part.ts';
import type { KeptPlan } from './plan.ts';
import { questionsOf } from './written-bank.ts';

export function isAnswerTo(content: Content, plan: KeptPlan, item: string, value: string): boolean {
  try {
    const given: unknown = JSON.parse(value);
    if (plan.problems) return problemAnswerFrom(given).ok;
    return plan.walls ? isWall(content, plan, item, given) : isChoiceFor(content, item, given);
  } catch {
    return false;
  }
}

/** A card or a setting that no such wall has is nothing that this form can have sent. */
function isWall(content: Content, plan: KeptPlan, item: string, given: unknown): boolean {
  const read = wallAnswerFrom(given);
  const found = wallFor(content, plan, item);
  if (!read.ok || found.kind !== 'same') return read.ok;
  return attemptFrom(attemptFileFor(found.wall, read.value.moves), shelfOf(content)).ok;
}

function isChoiceFor(content: Content, item: string, given: unknown): boolean {
  const question = questionsOf(content).get(item);
  const read = answerFrom(given);
  return read.ok && (!question || read.value.kind === question.kind);
}
