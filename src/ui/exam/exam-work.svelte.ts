import { freshAttemptId } from '#ui/attempts/attempt-id.ts';
import type { Store } from '#ui/attempts/browser-store.ts';
import type { Clock, Receipt, Tell, Told } from './telling.ts';

/** `kept`: on this device, and to be sent yet. `late`: the server has it not, and time may still be given. */
export type AnswerState = 'saved' | 'kept' | 'late';

export type AnswerStates = Readonly<Record<string, AnswerState>>;

type Begun = {
  readonly id: string;
  readonly clock: Clock;
  readonly places: readonly { readonly key: string; readonly isAnswered: boolean }[];
  /** What the next answer is numbered with. */
  readonly sequence: number;
};

export type Means = {
  readonly store: Store;
  readonly tell: Tell;
  /** Milliseconds of a clock that nobody can set. */
  readonly now: () => number;
};

const sentAtOnce = 50;

const isTold = (value: unknown): value is Told =>
  typeof value === 'object' && value !== null && 'kind' in value;

/**
 * The work of one tab on one sitting. What is answered is kept on the device until the server has it, and
 * sent again as often as it takes; each has an id of its own, so that nothing is lost or counted twice.
 */
export class ExamWork {
  readonly id: string;
  readonly tab = freshAttemptId();
  readonly #means: Means;
  #sequence: number;
  #isSending = false;
  #readAt: number;
  clock = $state.raw<Clock>({ phase: 'open', left: 0, isOver: false });
  /** By the key of each item that was answered. */
  states = $state.raw<AnswerStates>({});
  /** Not acknowledged yet, in its order. */
  waiting = $state.raw<readonly Told[]>([]);
  isAway = $state(false);
  /** Set anew by `tick`, so that the time shown moves on. */
  left = $state(0);

  constructor({ id, clock, places, sequence }: Begun, means: Means) {
    this.id = id;
    this.#means = means;
    this.#sequence = sequence;
    this.#readAt = means.now();
    this.clock = clock;
    this.left = clock.left;
    const answered = places.filter(({ isAnswered }) => isAnswered);
    this.states = Object.fromEntries(answered.map(({ key }) => [key, 'saved']));
    this.#resume(places.map(({ key }) => key));
  }

  get #place(): string {
    return `exam-${this.id}`;
  }

  /** What an earlier page of this device could not send is sent by this one. */
  #resume(keys: readonly string[]): void {
    const kept = this.#means.store.read(this.#place);
    const told = Array.isArray(kept) ? kept.filter(isTold) : [];
    this.waiting = told.filter((one) => one.kind === 'answered' && keys.includes(one.key));
    for (const one of this.waiting) {
      if (one.kind !== 'answered') continue;
      this.#mark(one.key, 'kept');
      this.#sequence = Math.max(this.#sequence, one.sequence + 1);
    }
  }

  #mark(key: string, state: AnswerState): void {
    this.states = { ...this.states, [key]: state };
  }

  answer(key: string, value: string): Promise<void> {
    this.#mark(key, 'kept');
    const sequence = this.#sequence;
    this.#sequence += 1;
    return this.#add({
      kind: 'answered',
      id: freshAttemptId(),
      sequence,
      tab: this.tab,
      key,
      value,
      clientTime: Date.now(),
    });
  }

  /** The answer to an item that waits to be sent, as it was given. */
  valueOf(key: string): string | undefined {
    const last = this.waiting.findLast((one) => one.kind === 'answered' && one.key === key);
    return last?.kind === 'answered' ? last.value : undefined;
  }

  shown(key: string): Promise<void> {
    return this.#add({ kind: 'page-shown', key, tab: this.tab });
  }

  went(isAway: boolean): Promise<void> {
    return this.#add({ kind: isAway ? 'left-page' : 'came-back', tab: this.tab });
  }

  ranOut(): Promise<void> {
    return this.#add({ kind: 'time-ran-out' });
  }

  /** Whether it is handed in now: not before every answer has arrived. */
  async handIn(): Promise<boolean> {
    await this.send();
    if (this.waiting.some(({ kind }) => kind === 'answered')) return false;
    await this.#add({ kind: 'handed-in' });
    return this.clock.phase !== 'open';
  }

  async #add(told: Told): Promise<void> {
    this.waiting = [...this.waiting, told];
    this.#keep();
    await this.send();
  }

  #keep(): void {
    const { store } = this.#means;
    if (this.waiting.length === 0) store.remove(this.#place);
    else store.write(this.#place, this.waiting);
  }

  /** Sends what waits, until all of it is acknowledged or the server is away. */
  async send(): Promise<void> {
    if (this.#isSending) return;
    this.#isSending = true;
    try {
      while (this.waiting.length > 0 && (await this.#sendSome()));
    } finally {
      this.#isSending = false;
    }
  }

  /** Whether to go on at once. */
  async #sendSome(): Promise<boolean> {
    const batch = this.waiting.slice(0, sentAtOnce);
    const heard = await this.#means.tell(batch);
    this.isAway = heard === undefined;
    if (!heard) return false;
    this.#hear(heard.clock);
    const late = batch.filter((_, at) => isLate(heard.receipts[at]));
    batch.forEach((one, at) => this.#settle(one, heard.receipts[at]));
    this.waiting = this.waiting.filter((one) => !batch.includes(one) || late.includes(one));
    this.#keep();
    return late.length === 0;
  }

  #settle(told: Told, receipt: Receipt | undefined): void {
    if (told.kind !== 'answered' || !receipt) return;
    const isNewer = this.waiting.some(
      (one) => one.kind === 'answered' && one.key === told.key && one.sequence > told.sequence,
    );
    if ('as' in receipt && !isNewer) this.#mark(told.key, 'saved');
    if (isLate(receipt)) this.#mark(told.key, 'late');
  }

  /** Sends what waits; with nothing to send, hears where the sitting stands, as after time was given. */
  async ask(): Promise<void> {
    if (this.waiting.length > 0) return this.send();
    if (this.#isSending) return;
    this.#isSending = true;
    const heard = await this.#means.tell([]);
    this.#isSending = false;
    this.isAway = heard === undefined;
    if (heard) this.#hear(heard.clock);
    if (this.waiting.length > 0) await this.send();
  }

  #hear(clock: Clock): void {
    this.clock = clock;
    this.#readAt = this.#means.now();
    this.tick();
  }

  /** Reckons the time left from what the server last said. */
  tick(): void {
    this.left = this.clock.left - (this.#means.now() - this.#readAt);
  }
}

const isLate = (receipt: Receipt | undefined): boolean =>
  receipt !== undefined && 'refused' in receipt && receipt.refused === 'late';
