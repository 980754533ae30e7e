import type { KeyPointState } from '#engine/tracing/key-point-states.ts';
import { usualTrace } from '#engine/tracing/trace-model.ts';
import type { Question } from './question.ts';

/**
 * How likely it is that somebody has what a question is evidence for: the least of the key points of its
 * steps. Undefined where it is about no step.
 */
export function surenessOf(
  { of }: Pick<Question, 'of'>,
  states: readonly KeyPointState[],
): number | undefined {
  if (of.length === 0) return undefined;
  const known = states
    .filter(({ point }) =>
      of.some(({ method, step }) => point.method === method && point.step === step),
    )
    .map(({ probability }) => probability);
  return known.length > 0 ? Math.min(...known) : usualTrace.known;
}

/** Questions about what somebody is least sure of first; those about no step last, each as given. */
export function leastSureFirst<Q extends Pick<Question, 'of'>>(
  questions: readonly Q[],
  states: readonly KeyPointState[],
): readonly Q[] {
  const sureness = new Map(questions.map((question) => [question, surenessOf(question, states)]));
  const of = (question: Q): number => sureness.get(question) ?? 2;
  return questions.toSorted((a, b) => of(a) - of(b));
}
