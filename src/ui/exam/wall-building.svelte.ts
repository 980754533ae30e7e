import { isWait, type Move, playedIn, waitedIn, type WallAnswer } from '#engine/marking/moves.ts';
import { SettingEntry, settingsIn } from '#ui/mockup/setting-entry.svelte.ts';
import type { AskedCard, AskedSetting } from '#engine/inspection/asked-wall.ts';

/** Moves in a row that are kept one by one; later waits are added up, so that what is sent stays short. */
const manyMoves = 300;

/**
 * A wall of an examination while it is built. It knows its cards and what was done with them, and nothing
 * of what is right: any card may be put up at any time.
 */
export class WallBuilding {
  readonly cards: readonly AskedCard[];
  moves = $state.raw<readonly Move[]>([]);
  chosen = $state<string>();
  entries = $state.raw<readonly SettingEntry<AskedSetting>[]>([]);
  readonly #onmove: (answer: WallAnswer) => void;

  constructor(
    cards: readonly AskedCard[],
    moves: readonly Move[],
    onmove: (answer: WallAnswer) => void,
  ) {
    this.cards = cards;
    this.moves = moves;
    this.#onmove = onmove;
  }

  readonly played = $derived(playedIn(this.moves));
  readonly minute = $derived(waitedIn(this.moves));
  readonly left = $derived.by(() => {
    const up = this.played.map(({ step }) => step);
    return this.cards.filter(({ id }) => !up.includes(id));
  });
  readonly card = $derived.by(() => this.cardOf(this.chosen ?? ''));

  cardOf(id: string): AskedCard | undefined {
    return this.cards.find((card) => card.id === id);
  }

  choose(id: string | undefined): void {
    if (id === this.chosen) return;
    this.chosen = id;
    this.entries = (this.card?.asks ?? []).map((ask) => new SettingEntry(ask, ask.start));
  }

  /** Whether it is up now: not before every setting of it is made. */
  place(): boolean {
    const { card, entries } = this;
    if (!card || entries.some((entry) => !entry.isRight)) return false;
    this.#make([...this.moves, { card: card.id, settings: settingsIn(entries) }]);
    return true;
  }

  wait(minutes: number): void {
    const last = this.moves.at(-1);
    const isLong = this.moves.length >= manyMoves && last !== undefined && isWait(last);
    this.#make(
      isLong
        ? [...this.moves.slice(0, -1), { wait: last.wait + minutes }]
        : [...this.moves, { wait: minutes }],
    );
  }

  undo(): void {
    if (this.moves.length > 0) this.#make(this.moves.slice(0, -1));
  }

  #make(moves: readonly Move[]): void {
    this.moves = moves;
    this.chosen = undefined;
    this.entries = [];
    this.#onmove({ kind: 'wall', moves });
  }
}
