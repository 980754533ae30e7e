import type { Choice } from '#engine/takeoff/choices.ts';
import { choicesOf } from '#engine/takeoff/choices.ts';
import type { Amount, Instance, Solved } from '#engine/takeoff/instance.ts';
import type { AnswerForm, KeptAnswer, KeptTry } from '#engine/takeoff/kept-problem.ts';
import { creditOf, judgeAnswer } from '#engine/takeoff/marks.ts';
import { echo, pickableUnits, readAnswer, type Reading } from '#engine/takeoff/read-answer.ts';
import type { Style } from '#engine/takeoff/style.ts';
import type { Verdict } from '#engine/takeoff/verdict.ts';
import type { Text } from '#engine/text.ts';
import { ofDifferentUnits } from './writing.ts';

type Earlier = ReadonlyMap<Solved['part']['id'], Amount>;

/** One part of a problem while it is answered. Every try is judged; the first is what counts. */
export class PartAnswer {
  readonly solved: Solved;
  readonly ask: Text;
  /** To pick from: the choices of the form, or the two ways of a decision. None where it is written. */
  readonly choices: readonly Choice[];
  readonly units: readonly Style[];

  text = $state('');
  picked = $state<Style>();
  chosen = $state<number>();
  tries = $state.raw<readonly KeptTry[]>([]);
  verdicts = $state.raw<readonly Verdict[]>([]);
  /** What was read last, for the parts that follow. */
  value = $state.raw<Amount>();
  /** As the last try was read. */
  answered = $state.raw<Text>();
  /** Why the last try could not be read. */
  unread = $state.raw<Text>();
  isShown = $state(false);
  readonly #instance: Instance;

  constructor(instance: Instance, place: number, ask: Text, form: AnswerForm, seed: string) {
    const solved = instance.parts[place];
    if (!solved) throw new RangeError(`The problem has no part ${place}.`);
    const { part } = solved;
    this.#instance = instance;
    this.solved = solved;
    this.ask = ask;
    this.units = ofDifferentUnits(pickableUnits(part));
    this.picked = this.units[0];
    const isPicked = form === 'choice' || part.answer.kind === 'decision';
    this.choices = isPicked ? choicesOf(instance, part.id, seed) : [];
  }

  get kind() {
    return this.solved.part.term.kind;
  }

  get isPicked(): boolean {
    return this.choices.length > 0;
  }

  /** The verdict on the last try. */
  readonly verdict: Verdict | undefined = $derived(this.verdicts.at(-1));
  /** Nothing more is to be answered here. */
  readonly isClosed: boolean = $derived(this.isShown || this.verdict?.kind === 'right');

  /** How what stands in the field is read while it is written; undefined where it cannot be. */
  readonly echo: Text | undefined = $derived.by(() => {
    const read = this.#read();
    return read?.ok && !this.isPicked ? echo(this.solved.part, read.value) : undefined;
  });

  #read() {
    const choice = this.chosen === undefined ? undefined : this.choices[this.chosen];
    if (this.isPicked) {
      const reading: Reading | undefined = choice && { value: choice.value, unit: undefined };
      return reading && ({ ok: true, value: reading } as const);
    }
    return this.text.trim() === ''
      ? undefined
      : readAnswer(this.solved.part, this.text, this.picked);
  }

  check(earlier: Earlier): 'judged' | 'unread' | 'empty' {
    const read = this.#read();
    if (!read) return 'empty';
    if (!read.ok) {
      this.unread = read.error.message;
      return 'unread';
    }
    const { part } = this.solved;
    this.unread = undefined;
    this.value = read.value.value;
    this.answered = this.isPicked ? this.choices[this.chosen!]!.text : echo(part, read.value);
    this.verdicts = [...this.verdicts, judgeAnswer(this.#instance, part.id, read.value, earlier)];
    this.tries = [...this.tries, this.#try()];
    return 'judged';
  }

  #try(): KeptTry {
    if (this.isPicked) return { text: this.choices[this.chosen!]!.text.en };
    return this.picked === undefined
      ? { text: this.text }
      : { text: this.text, picked: this.picked };
  }

  show(): void {
    this.isShown = true;
  }

  /** Undefined where nothing was done here. */
  kept(): KeptAnswer | undefined {
    const first = this.verdicts[0];
    if (!first && !this.isShown) return undefined;
    return {
      part: this.solved.part.id,
      tries: this.tries,
      verdict: first?.kind ?? 'wrong',
      slips: first?.slips.map(({ id }) => id) ?? [],
      followed: first?.followed ?? false,
      credit: creditOf(first),
      shown: this.isShown,
      closed: this.isClosed,
    };
  }

  /** Does again what was kept. False where it does not fit this problem any more. */
  replay(kept: KeptAnswer, earlier: Earlier): boolean {
    for (const { text, picked } of kept.tries) {
      if (this.isPicked) {
        const place = this.choices.findIndex((choice) => choice.text.en === text);
        if (place < 0) return false;
        this.chosen = place;
      } else {
        this.text = text;
        this.picked = this.units.find((unit) => unit === picked) ?? this.units[0];
      }
      if (this.check(earlier) !== 'judged') return false;
    }
    this.isShown = kept.shown;
    return true;
  }
}
