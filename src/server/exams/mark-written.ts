/**
 * Marks the answers of a written sitting. What can no longer be marked as it was asked counts for nobody:
 * a question that was retired, that is gone, or whose choices were changed since the form was drawn.
 */
import type { Content } from '#engine/compile/content.ts';
import type { Mark } from '#engine/exam/score.ts';
import { givenAnswers } from '#engine/exam/sitting.ts';
import { rational } from '#engine/measure/rational.ts';
import { fault, type Result } from '#engine/result.ts';
import type { Text } from '#engine/text.ts';
import type { Answer } from '#engine/written/answer.ts';
import { answerFrom } from '#engine/written/answer-from.ts';
import { fitted } from '#engine/written/fitted.ts';
import { markAnswer } from '#engine/written/mark-answer.ts';
import { posed } from '#engine/written/posed.ts';
import type { Question } from '#engine/written/question.ts';
import type { Verdict } from '#engine/written/verdict.ts';
import { shelfOf } from '../attempts/shelf.ts';
import { keptPlan, type KeptPlan } from './plan.ts';
import type { Known } from './sitting-log.ts';
import { questionsOf } from './written-bank.ts';

/** Of a fault on a wall, only its reason is kept: the wall can be drawn again. */
export type KeptVerdict =
  | Exclude<Verdict, { readonly kind: 'find-fault' }>
  | (Pick<Verdict, 'outcome' | 'credit' | 'point'> & {
      readonly kind: 'find-fault';
      readonly because: Text;
    });

export type LeftOut = 'retired' | 'gone' | 'changed';

/** One question as it was marked; nothing of `verdict` where it was not answered. */
export type WrittenLine = {
  readonly item: string;
  readonly topic: string | undefined;
  readonly ask: Text | undefined;
  readonly unit: Text | undefined;
  readonly verdict: KeptVerdict | undefined;
  readonly leftOut: LeftOut | undefined;
};

export const markWritten = (content: Content, known: Known): readonly WrittenLine[] => {
  const plan = keptPlan(known.row);
  const isChanged = known.row.content_revision !== content.revision;
  return givenAnswers(known.sitting).map(({ item, answer }): WrittenLine => {
    const isRetired = known.sitting.retired.has(item);
    const question = questionsOf(content).get(item);
    if (!question) return goneLine(item);
    const read = answer && readAnswer(content, plan, question, answer.value);
    // Under the very content it was asked by, what fits no choice is just wrong.
    const isUnfit = read?.ok === false && isChanged;
    const verdict = read?.ok ? markAnswer(question, read.value, shelfOf(content)) : undefined;
    const leftOut = isRetired ? 'retired' : isUnfit ? 'changed' : undefined;
    const { topic, ask, unit } = { ...words(content, question), topic: question.topic };
    return { item, topic, ask, unit, verdict: verdict && slim(verdict), leftOut };
  });
};

const goneLine = (item: string): WrittenLine => ({
  item,
  topic: undefined,
  ask: undefined,
  unit: undefined,
  verdict: undefined,
  leftOut: 'gone',
});

function readAnswer(
  content: Content,
  { seed }: KeptPlan,
  question: Question,
  value: string,
): Result<Answer, 'UNFIT'> {
  try {
    const read = answerFrom(JSON.parse(value), posed(question, seed, shelfOf(content)));
    return read.ok ? read : fault('UNFIT');
  } catch {
    return fault('UNFIT');
  }
}

function words(content: Content, question: Question): Pick<WrittenLine, 'ask' | 'unit'> {
  const put = posed(question, 0, shelfOf(content));
  const ask = fitted(question, shelfOf(content))?.ask;
  return { ask, unit: put?.kind === 'number' ? put.unitLabel : undefined };
}

function slim(verdict: Verdict): KeptVerdict {
  if (verdict.kind !== 'find-fault') return verdict;
  const { kind, outcome, credit, point, because } = verdict;
  return { kind, outcome, credit, point, because };
}

const whole = rational(1);

/** Credit is to a thousandth. */
export const markOf = ({ item, verdict }: WrittenLine): Mark => ({
  item,
  earned: rational(Math.round((verdict?.credit ?? 0) * 1000), 1000),
  possible: whole,
});
