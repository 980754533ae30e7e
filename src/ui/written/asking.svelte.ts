import type { Shelf } from '#engine/marking/attempt-from.ts';
import { randomFrom, shuffle } from '#engine/random.ts';
import type { Answer } from '#engine/written/answer.ts';
import { markAnswer } from '#engine/written/mark-answer.ts';
import { type Next, nextToAsk } from '#engine/written/next-to-ask.ts';
import { type Posed, posed } from '#engine/written/posed.ts';
import type { Question, QuestionId } from '#engine/written/question.ts';
import { type Answered, dayOf } from '#engine/written/return.ts';
import { statesFromAnswers } from '#engine/written/states-from-answers.ts';
import type { Topic } from '#engine/written/topic.ts';
import type { Verdict } from '#engine/written/verdict.ts';

/** When it is, and how far the person's clock is ahead of UTC. */
export type Clock = () => { readonly now: number; readonly minutesAhead: number };

const standingIn = (answers: readonly Answered[], questions: readonly Question[]) => {
  const last = (id: QuestionId) => answers.findLast(({ question }) => question === id);
  const known = questions.flatMap(({ id }) => last(id) ?? []);
  return { asked: known.length, right: known.filter(({ isRight }) => isRight).length };
};

type Put = Next<Question> & { readonly posed: Posed };

/** One person going through a topic: what is asked, what was answered, and what it was worth. */
export class Asking {
  readonly topic: Topic;
  readonly #shelf: Shelf;
  readonly #clock: Clock;
  /** Those that can be asked on this shelf. */
  readonly #questions: readonly Question[];
  answers = $state.raw<readonly Answered[]>([]);
  put = $state.raw<Put>();
  verdict = $state.raw<Verdict>();

  /** `made` are questions made from methods, asked among those of the topic. */
  constructor(topic: Topic, shelf: Shelf, clock: Clock, made: readonly Question[] = []) {
    this.topic = topic;
    this.#shelf = shelf;
    this.#clock = clock;
    const { now, minutesAhead } = clock();
    // In another order every day, so that kinds and steps mix.
    const random = randomFrom(`${topic.id}/${dayOf(now, minutesAhead)}`);
    const all = [...topic.questions, ...made];
    const asked = all.filter((question) => posed(question, 0, shelf));
    this.#questions = shuffle(random, asked);
  }

  get count(): number {
    return this.#questions.length;
  }

  /** How many different ones were asked, and of how many the last answer was right. */
  readonly standing = $derived.by(() => standingIn(this.answers, this.#questions));

  /** Goes on from what was answered before. */
  resume(answers: readonly Answered[]): void {
    this.answers = answers;
    this.next();
  }

  next(): void {
    this.verdict = undefined;
    const { now, minutesAhead } = this.#clock();
    const states = statesFromAnswers(this.#questions, this.answers);
    const learner = { answers: this.answers, states, now, minutesAhead };
    const next = nextToAsk(this.#questions, learner);
    const shown = next && posed(next.question, this.answers.length, this.#shelf);
    this.put = next && shown && { ...next, posed: shown };
  }

  /** Does nothing where nothing is asked, or it was answered already. */
  hand(answer: Answer): void {
    if (!this.put || this.verdict) return;
    const { question } = this.put;
    const verdict = markAnswer(question, answer, this.#shelf);
    const { now } = this.#clock();
    const given = { question: question.id, isRight: verdict.outcome === 'right', at: now };
    this.answers = [...this.answers, given];
    this.verdict = verdict;
  }
}
