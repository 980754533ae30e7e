import type { Shelf } from '#engine/marking/attempt-from.ts';
import type { Answer } from '#engine/written/answer.ts';
import { answerFrom } from '#engine/written/answer-from.ts';
import type { KeptRun } from '#engine/written/kept-run.ts';
import { markAnswer } from '#engine/written/mark-answer.ts';
import { type Posed, posed } from '#engine/written/posed.ts';
import type { Question } from '#engine/written/question.ts';
import { markRun, runOf } from '#engine/written/run.ts';
import type { Topic } from '#engine/written/topic.ts';
import type { Verdict } from '#engine/written/verdict.ts';
import type { RunAddress } from './run-address.ts';

type Stamp = { readonly id: string; readonly at: string };
type Put = { readonly question: Question; readonly posed: Posed };

/** A run of questions that was given as work: each is asked once, and answered for good. */
export class Running {
  readonly questions: readonly Question[];
  readonly #topic: Topic;
  readonly #address: RunAddress;
  readonly #means: { readonly shelf: Shelf; readonly revision: string };
  answers = $state.raw<readonly Answer[]>([]);
  verdict = $state.raw<Verdict>();
  /** Whether the verdict of the last answer is still to be read. */
  #place = $state(0);

  constructor(topic: Topic, address: RunAddress, means: Running['means']) {
    this.#topic = topic;
    this.#address = address;
    this.#means = means;
    this.questions = runOf(topic, address, means.shelf);
  }

  get means(): { readonly shelf: Shelf; readonly revision: string } {
    return this.#means;
  }

  /** Undefined once every question was answered and the last verdict read. */
  readonly put = $derived.by((): Put | undefined => {
    const question = this.questions[this.#place];
    const shown = question && posed(question, this.#address.seed, this.#means.shelf);
    return question && shown && { question, posed: shown };
  });
  readonly isDone = $derived.by(() => this.answers.length === this.questions.length);
  readonly place = $derived.by(() => Math.min(this.#place + 1, this.questions.length));

  /** Marked as the server will; undefined until it is done. */
  readonly marked = $derived.by(() => {
    if (!this.isDone) return undefined;
    const marked = markRun(this.#topic, this.kept({ id: '', at: '' }), this.#means);
    return marked.ok ? marked.value : undefined;
  });

  /** Goes on where somebody left off; what no longer answers its question ends it there. */
  resume({ answers, revision }: KeptRun): void {
    if (revision !== this.#means.revision) return;
    const read: Answer[] = [];
    for (const [place, given] of answers.entries()) {
      const question = this.questions[place];
      const asked = question && posed(question, this.#address.seed, this.#means.shelf);
      const answer = asked && answerFrom(given, asked);
      if (!answer?.ok) break;
      read.push(answer.value);
    }
    this.answers = read;
    this.#place = read.length;
  }

  /** Does nothing where nothing is asked, or it was answered already. */
  hand(answer: Answer): void {
    const { put } = this;
    if (!put || this.verdict) return;
    this.verdict = markAnswer(put.question, answer, this.#means.shelf);
    this.answers = [...this.answers, answer];
  }

  next(): void {
    this.verdict = undefined;
    this.#place = this.answers.length;
  }

  kept({ id, at }: Stamp): KeptRun {
    const questions = this.questions.map((question) => question.id);
    const { revision } = this.#means;
    return { id, at, ...this.#address, revision, questions, answers: this.answers };
  }
}
