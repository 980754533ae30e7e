/**
 * What to ask next: a question that was missed and whose turn has come, else a new one about what the
 * person is least sure of, else the one that was asked longest ago. Missed ones that wait for others in
 * this sitting come early where there are no others. Never the one just answered, while there is another.
 */
import type { KeyPointState } from '#engine/tracing/key-point-states.ts';
import { leastSureFirst } from './least-sure.ts';
import type { Question, QuestionId } from './question.ts';
import { due, returns, type Answered } from './return.ts';

export type Next<Q> = { readonly question: Q; readonly why: 'missed' | 'unsure' | 'over-again' };

export type Learner = {
  /** The earliest first. */
  readonly answers: readonly Answered[];
  /** Of the methods that the questions are about; none where nothing was built. */
  readonly states: readonly KeyPointState[];
  readonly now: number;
  readonly minutesAhead?: number;
};

type Asking = Pick<Question, 'id' | 'of'>;

/** Undefined where there is no question at all. */
export function nextToAsk<Q extends Asking>(
  questions: readonly Q[],
  { answers, states, now, minutesAhead = 0 }: Learner,
): Next<Q> | undefined {
  const last = answers.at(-1)?.question;
  const others = questions.filter(({ id }) => id !== last);
  const among = others.length > 0 ? others : questions;
  const byId = new Map<QuestionId, Q>(among.map((question) => [question.id, question]));
  const missed = returns(answers, now, minutesAhead);
  const first = due(missed, now, minutesAhead).flatMap(({ question }) => byId.get(question) ?? []);
  if (first[0]) return { question: first[0], why: 'missed' };

  const asked = new Map(answers.map(({ question, at }) => [question, at]));
  const [unasked] = leastSureFirst(
    among.filter(({ id }) => !asked.has(id)),
    states,
  );
  if (unasked) return { question: unasked, why: 'unsure' };

  const waiting = missed.flatMap(({ question, kind }) =>
    kind === 'again' ? (byId.get(question) ?? []) : [],
  );
  if (waiting[0]) return { question: waiting[0], why: 'missed' };
  const [oldest] = among.toSorted((a, b) => (asked.get(a.id) ?? 0) - (asked.get(b.id) ?? 0));
  return oldest && { question: oldest, why: 'over-again' };
}
