import type { MethodBundle } from '#engine/compile/method-bundle.ts';
import { type Help, hintAt, readySteps, type Rung, rungs } from '#engine/marking/guidance.ts';
import { type BenchCard, benchOf, startingValue } from '#engine/method/bench.ts';
import { installMachine } from '#engine/method/install-machine.ts';
import { partOf, placesOf } from '#engine/method/part-of.ts';
import type { Sequence, SequenceStep } from '#engine/method/sequence.ts';
import { randomFrom } from '#engine/random.ts';
import { type Installation, installation, unbound } from './installation.ts';
import {
  attemptOf,
  cardsIn,
  type Helped,
  isWait,
  type Move,
  playedIn,
  quantityText,
  waitedIn,
} from './move.ts';
import type { Hint, News } from './news.ts';
import { doneIn, type Refusal, refusalOf } from './refusal.ts';
import { SettingEntry, settingsIn } from './setting-entry.svelte.ts';
import { type Touch, touchAll } from '#engine/marking/touch-all.ts';
import type { WallAddress } from './wall-address.ts';

export type Work = { readonly moves: readonly Move[]; readonly helped: readonly Helped[] };

/**
 * A wall while it is built. All of it follows from the moves: undoing one runs the machine anew
 * through those that are left. Help is not a move, so that it is never undone.
 */
export class Mockup {
  readonly wall: WallAddress;
  readonly bundle: MethodBundle;
  readonly whole: Sequence;
  /** What is to be built here: the whole wall, or the stretch that is practised. */
  readonly sequence: Sequence;
  /** What stands already before a stretch, in a correct order. */
  readonly before: readonly SequenceStep[];
  readonly bench: readonly BenchCard[];

  moves = $state.raw<readonly Move[]>([]);
  helped = $state.raw<readonly Helped[]>([]);
  chosen = $state<string>();
  entries = $state.raw<readonly SettingEntry[]>([]);
  refusal = $state.raw<Refusal>();
  touched = $state.raw<readonly Touch[]>();
  news = $state.raw<News>();
  readonly #machine: ReturnType<typeof installMachine>;
  #installed: Installation;
  /** The last card and settings that were refused, and how many moves there were then. */
  #refused = '';

  constructor(bundle: MethodBundle, wall: WallAddress, whole: Sequence) {
    this.bundle = bundle;
    this.wall = wall;
    this.whole = whole;
    const places = wall.part && placesOf(whole, wall.part);
    this.sequence = (wall.part && partOf(whole, wall.part)) ?? whole;
    this.before = places ? whole.steps.slice(0, places[0]) : [];
    this.bench = benchOf(this.sequence, randomFrom(`${wall.seed}/bench`));
    this.#machine = installMachine(this.isGuided ? this.sequence : unbound(this.sequence));
    this.#installed = installation(this.#machine);
  }

  get isGuided(): boolean {
    return this.wall.mode === 'guided';
  }

  readonly played = $derived(playedIn(this.moves));
  readonly placed = $derived(cardsIn(this.played));
  readonly minute = $derived(waitedIn(this.moves));
  readonly attempt = $derived.by(() => attemptOf(this.sequence, this.bench, this.played));
  readonly left = $derived.by(() => this.bench.filter(({ id }) => !this.placed.has(id)));
  readonly isComplete = $derived.by(() =>
    this.sequence.steps.every(({ id }) => this.placed.has(id)),
  );
  /** Guided, nothing more can come. On your own, nobody says so. */
  readonly isReady = $derived.by(() => this.isGuided && this.isComplete);
  readonly help: readonly Help[] = $derived(this.helped.map(({ help }) => help));
  readonly card = $derived.by(() => this.cardOf(this.chosen ?? ''));

  cardOf(id: string): BenchCard | undefined {
    return this.bench.find((card) => card.id === id);
  }

  choose(id: string | undefined): void {
    if (id === this.chosen) return;
    this.chosen = id;
    this.refusal = undefined;
    const asks = this.card?.asks ?? [];
    this.entries = asks.map((ask) => {
      const random = randomFrom(`${this.wall.seed}/${id}/${ask.id}`);
      return new SettingEntry(ask, startingValue(ask, random));
    });
  }

  /** Puts the chosen card up, if its settings are made and, when guided, nothing speaks against it. */
  place(): 'placed' | 'refused' | 'unset' | 'nothing' {
    const { card, entries } = this;
    if (!card) return 'nothing';
    if (entries.some((entry) => !entry.isRight)) return 'unset';
    const isAgain = this.refusal?.kind === 'tolerance';
    this.refusal = this.isGuided
      ? refusalOf(this.sequence, this.#installed, this.placed, card.id, entries, isAgain)
      : undefined;
    if (this.refusal) {
      this.#chargeRefusal(card.id);
      this.news = { kind: 'refused', refusal: this.refusal };
      return 'refused';
    }
    this.#installed.place(card.id);
    this.moves = [...this.moves, { card: card.id, settings: settingsIn(entries) }];
    this.#settleDown();
    this.news = { kind: 'placed', card, count: this.played.length };
    return 'placed';
  }

  wait(minutes: number): void {
    this.#installed.wait(minutes);
    this.moves = [...this.moves, { wait: minutes }];
    this.refusal = undefined;
    this.touched = undefined;
    this.news = { kind: 'waited', minutes, reading: this.minute };
  }

  undo(): void {
    const undone = this.moves.at(-1);
    if (!undone) return;
    this.#install(this.moves.slice(0, -1));
    this.#settleDown();
    this.news = isWait(undone)
      ? { kind: 'unwaited', minutes: undone.wait, reading: this.minute }
      : { kind: 'undone', card: this.cardOf(undone.card) };
  }

  /** What a knuckle tells of everything put up that dries, the latest first. */
  touch(): void {
    this.touched = touchAll(this.attempt, this.minute).toReversed();
    this.news = { kind: 'touched', touched: this.touched };
  }

  /** The step that a hint is about: the one it was about before while that may come, or the first that may. */
  readonly #next = $derived.by(() => {
    const { steps } = this.sequence;
    const ready = readySteps(this.sequence, doneIn(this.sequence, this.placed));
    const asked = this.helped.findLast(({ help }) => help !== 'refusal')?.card;
    return ready.find((place) => steps[place]!.id === asked) ?? ready[0];
  });

  /** The rungs already climbed for the next step. */
  readonly hints: readonly Hint[] = $derived.by(() => {
    const place = this.#next;
    if (place === undefined) return [];
    const { id } = this.sequence.steps[place]!;
    return rungs
      .filter((rung) => this.helped.some(({ help, card }) => help === rung && card === id))
      .map((rung) => ({ rung, texts: hintAt(this.sequence, place, rung) }));
  });

  /** The rung that another hint would climb. */
  readonly rung: Rung | undefined = $derived(
    this.#next === undefined ? undefined : rungs[this.hints.length],
  );

  takeHint(): void {
    const step = this.#next === undefined ? undefined : this.sequence.steps[this.#next];
    if (!step || !this.rung) return;
    const { rung } = this;
    this.#charge(rung, step.id);
    this.news = { kind: 'hinted', hint: this.hints.at(-1)! };
  }

  /** Goes on where somebody left off. False where a card of it is not on this bench. */
  resume({ moves, helped }: Work): boolean {
    const known = moves.every((move) => isWait(move) || this.cardOf(move.card) !== undefined);
    if (!known) return false;
    this.#install(moves);
    this.helped = helped;
    this.#settleDown();
    return true;
  }

  startAgain(): void {
    this.#install([]);
    this.helped = [];
    this.#settleDown();
    this.news = undefined;
  }

  #install(moves: readonly Move[]): void {
    this.#installed = installation(this.#machine);
    for (const move of moves) {
      if (isWait(move)) this.#installed.wait(move.wait);
      else this.#installed.place(move.card);
    }
    this.moves = moves;
  }

  #settleDown(): void {
    this.chosen = undefined;
    this.entries = [];
    this.refusal = undefined;
    this.touched = undefined;
  }

  /** The same refusal twice in a row costs once: a press too many is no mistake. */
  #chargeRefusal(card: string): void {
    const values = this.entries.map(({ value }) => value && quantityText(value));
    const refused = [this.moves.length, card, ...values].join('/');
    if (refused !== this.#refused) this.#charge('refusal', card);
    this.#refused = refused;
  }

  #charge(help: Help, card: string): void {
    this.helped = [...this.helped, { help, card }];
  }
}
