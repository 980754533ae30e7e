/**
 * Whether what was sent is an answer to what was asked, by its shape alone: what it says, and whether its
 * choices are on the form, is for the marking to read.
 */
import type { Content } from '#engine/compile/content.ts';
import { problemAnswerFrom } from '#engine/takeoff/problem-answer.ts';
import { answerFrom } from '#engine/written/answer-from.ts';
import type { KeptPlan } from './plan.ts';
import { questionsOf } from './written-bank.ts';

export function isAnswerTo(content: Content, plan: KeptPlan, item: string, value: string): boolean {
  try {
    const given: unknown = JSON.parse(value);
    return plan.problems ? problemAnswerFrom(given).ok : isChoiceFor(content, item, given);
  } catch {
    return false;
  }
}

function isChoiceFor(content: Content, item: string, given: unknown): boolean {
  const question = questionsOf(content).get(item);
  const read = answerFrom(given);
  return read.ok && (!question || read.value.kind === question.kind);
}
