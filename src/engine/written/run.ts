/**
 * A run of questions of one topic, such as is given as work: which ones, and in what order, follows from
 * its seed. Each is answered once. O(questions of the topic).
 */
import type { Shelf } from '#engine/marking/attempt-from.ts';
import { randomFrom, shuffle } from '#engine/random.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { answerFrom } from './answer-from.ts';
import type { KeptRun } from './kept-run.ts';
import { markAnswer } from './mark-answer.ts';
import { posed } from './posed.ts';
import type { Question } from './question.ts';
import type { Topic } from './topic.ts';
import type { Verdict } from './verdict.ts';

type Asks = Pick<KeptRun, 'seed' | 'count'>;

/** As many as asked for, or all that can be asked on this shelf. */
export const runOf = (topic: Topic, { seed, count }: Asks, shelf: Shelf): readonly Question[] =>
  shuffle(
    randomFrom(`${topic.id}/run/${seed}`),
    topic.questions.filter((question) => posed(question, seed, shelf)),
  ).slice(0, count);

export type MarkedRun = {
  /** Mean credit, from 0 to 100, to a tenth; a question without an answer earns nothing. */
  readonly score: number;
  readonly answers: readonly MarkedAnswer[];
};

type MarkedAnswer = {
  readonly question: Question;
  /** Undefined where it was not answered. */
  readonly verdict: Verdict | undefined;
};

export type RunFault = {
  readonly code: 'OTHER_QUESTIONS' | 'NOT_AN_ANSWER';
  readonly path: string;
  readonly message: string;
};

/**
 * Marks what was answered, whatever the browser made of it. With the content it was asked from, the
 * questions have to be those of its seed; after the content was changed, those that it names, of which
 * each has to be there still with the choices that were taken.
 */
export function markRun(
  topic: Topic,
  kept: KeptRun,
  { shelf, revision }: { readonly shelf: Shelf; readonly revision: string },
): Result<MarkedRun, readonly RunFault[]> {
  const today = runOf(topic, kept, shelf);
  const isSame =
    today.length === kept.questions.length &&
    today.every(({ id }, place) => id === kept.questions[place]);
  const isShort = kept.questions.length < Math.min(kept.count, today.length);
  if (isShort || (kept.revision === revision && !isSame)) {
    return refuse('OTHER_QUESTIONS', 'kept.questions', 'These are not the questions of this seed.');
  }
  const byId = new Map(topic.questions.map((question) => [question.id as string, question]));
  const faults: RunFault[] = [];
  const answers = kept.questions.flatMap((id, place): readonly MarkedAnswer[] => {
    const question = byId.get(id);
    const asked = question && posed(question, kept.seed, shelf);
    if (!question || !asked) {
      const message = 'This question is not asked any more.';
      faults.push({ code: 'OTHER_QUESTIONS', path: `kept.questions[${place}]`, message });
      return [];
    }
    const given = kept.answers[place];
    if (given === null || given === undefined) return [{ question, verdict: undefined }];
    const answer = answerFrom(given, asked);
    if (!answer.ok) {
      const path = `kept.answers[${place}]`;
      const message = answer.error.map((one) => one.message).join(' ');
      faults.push({ code: 'NOT_AN_ANSWER', path, message });
      return [];
    }
    return [{ question, verdict: markAnswer(question, answer.value, shelf) }];
  });
  if (faults.length > 0) return fault(faults);
  const earned = answers.reduce((sum, { verdict }) => sum + (verdict?.credit ?? 0), 0);
  return ok({ score: Math.round((1000 * earned) / answers.length) / 10, answers });
}

const refuse = (code: RunFault['code'], path: string, message: string) =>
  fault([{ code, path, message }]);
