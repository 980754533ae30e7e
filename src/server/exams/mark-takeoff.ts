/**
 * Marks what was written for the problems of a take-off: each part by the right answers and, where it is
 * not right by those, by the candidate's own earlier ones. A problem counts 1, shared among its parts.
 */
import type { Content } from '#engine/compile/content.ts';
import type { Mark } from '#engine/exam/score.ts';
import { givenAnswers } from '#engine/exam/sitting.ts';
import { rational } from '#engine/measure/rational.ts';
import { inEach } from '#engine/takeoff/fill-text.ts';
import type { Instance } from '#engine/takeoff/instance.ts';
import { markAnswers, type Mark as PartMark } from '#engine/takeoff/marks.ts';
import { problemOf, type Stated, writeAnswer } from '#engine/takeoff/problem.ts';
import {
  type ProblemAnswer,
  problemAnswerFrom,
  writtenIn,
} from '#engine/takeoff/problem-answer.ts';
import { echo, pickableUnits } from '#engine/takeoff/read-answer.ts';
import type { VerdictKind } from '#engine/takeoff/verdict.ts';
import { workedSolution, type WorkedLine } from '#engine/takeoff/worked.ts';
import type { Text } from '#engine/text.ts';
import { keptPlan } from './plan.ts';
import type { Known } from './sitting-log.ts';
import { problemFor } from './takeoff-part.ts';

export type MarkedPart = {
  readonly ask: Text;
  /** As it was typed; nothing where nothing was. */
  readonly given: string | undefined;
  /** As it was read. */
  readonly read: Text | undefined;
  /** Why it could not be read. */
  readonly unread: Text | undefined;
  readonly verdict: VerdictKind | undefined;
  readonly say: Text | undefined;
  readonly right: Text;
  readonly worked: readonly WorkedLine[];
};

/** One problem as it was marked, with all that it stated. */
export type TakeoffLine = {
  readonly item: string;
  readonly topic: string | undefined;
  readonly ask: Text | undefined;
  readonly intro: Text | undefined;
  readonly stated: readonly Stated<string>[];
  readonly parts: readonly MarkedPart[];
  /** Of 1. */
  readonly credit: number;
  readonly leftOut: 'retired' | 'gone' | 'changed' | undefined;
};

export const markTakeoff = (content: Content, known: Known): readonly TakeoffLine[] => {
  const plan = keptPlan(known.row);
  return givenAnswers(known.sitting).map(({ item, answer }): TakeoffLine => {
    const found = problemFor(content, plan, item);
    if (found.kind !== 'same') return lostLine(item, found.kind);
    const leftOut = known.sitting.retired.has(item) ? 'retired' : undefined;
    return { ...lineOf(found.instance, item, answerIn(answer?.value)), leftOut };
  });
};

const lostLine = (item: string, leftOut: 'gone' | 'changed'): TakeoffLine => ({
  item,
  topic: undefined,
  ask: undefined,
  intro: undefined,
  stated: [],
  parts: [],
  credit: 0,
  leftOut,
});

const nothing: ProblemAnswer = { kind: 'problem', answers: [] };

function answerIn(value: string | undefined): ProblemAnswer {
  if (value === undefined) return nothing;
  try {
    const read = problemAnswerFrom(JSON.parse(value));
    return read.ok ? read.value : nothing;
  } catch {
    return nothing;
  }
}

function lineOf(
  instance: Instance,
  item: string,
  answer: ProblemAnswer,
): Omit<TakeoffLine, 'leftOut'> {
  const { title, intro, givens, numbers, asks } = problemOf(instance);
  const marks = markAnswers(instance, writtenIn(answer, unitsIn(instance)));
  const earned = marks.reduce((sum, { credit }) => sum + credit, 0);
  return {
    item,
    topic: instance.takeoff.family.topic,
    ask: title,
    intro,
    stated: [...givens, ...numbers],
    parts: marks.map((mark, place) => ({
      ask: asks[place]!.ask,
      given: answer.answers.find(({ part }) => part === mark.part)?.text,
      ...saidOf(mark),
      worked: workedSolution(instance, mark.part),
    })),
    credit: earned / marks.length,
  };
}

const unitsIn =
  ({ parts }: Instance) =>
  (id: string): readonly string[] => {
    const solved = parts.find(({ part }) => part.id === id);
    return solved ? pickableUnits(solved.part) : [];
  };

const saidOf = ({
  solved: { part, right },
  reading,
  verdict,
}: PartMark): Omit<MarkedPart, 'ask' | 'given' | 'worked'> => ({
  read: reading?.ok ? echo(part, reading.value) : undefined,
  unread: reading?.ok === false ? reading.error.message : undefined,
  verdict: verdict?.kind,
  say: verdict?.say,
  right: inEach((language) => writeAnswer(part.answer, right, language)),
});

const whole = rational(1);

/** Parts are marked in halves: exact over twice their number. */
export const markOfProblem = ({ item, parts, credit }: TakeoffLine): Mark => {
  const halves = 2 * Math.max(1, parts.length);
  return { item, earned: rational(Math.round(credit * halves), halves), possible: whole };
};
