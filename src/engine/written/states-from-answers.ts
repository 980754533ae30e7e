/**
 * How sure one may be of each step from the written answers about it, by the same model that reads what
 * was built: a miss makes the other questions about that step come sooner. O(answers x steps of each).
 */
import type { KeyPointState } from '#engine/tracing/key-point-states.ts';
import { traced } from '#engine/tracing/trace.ts';
import { sureFrom, usualTrace } from '#engine/tracing/trace-model.ts';
import type { Question } from './question.ts';
import type { Answered } from './return.ts';

/** One for each step that an answer was about. Answers to what is not asked any more count for nothing. */
export function statesFromAnswers(
  questions: readonly Pick<Question, 'id' | 'of'>[],
  answers: readonly Answered[],
): readonly KeyPointState[] {
  const about = new Map(questions.map(({ id, of }) => [id, of]));
  const seen = answers.flatMap(({ question, isRight }, at) =>
    (about.get(question) ?? []).map((step) => ({ ...step, isRight, at })),
  );
  const bySteps = Map.groupBy(seen, ({ method, step }) => `${method}/${step}`);
  return [...bySteps.values()].map((own): KeyPointState => {
    const { method, step } = own[0]!;
    const observations = own.map(({ isRight }) => isRight);
    const probability = traced(usualTrace, observations).at(-1)?.next ?? usualTrace.known;
    return {
      // Answers do not tell how much hangs on the step, and nothing here asks for it.
      point: { method, step, kind: 'step', severity: 'major' },
      observations,
      probability,
      isSure: probability >= sureFrom,
      lastSeen: own.at(-1)!.at,
    };
  });
}
