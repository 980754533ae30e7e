import type { Clues } from '#engine/inspection/clues.ts';
import type { FaultKind } from '#engine/inspection/fault.ts';
import type { Find } from '#engine/inspection/mark-finds.ts';
import type { Suspect } from '#engine/inspection/suspects.ts';
import type { Zone } from '#engine/method/drawing.ts';

/** Somebody looking over one wall: what they noted, and what they are about to say. */
export class Finding {
  readonly zones: readonly Zone[];
  finds = $state.raw<readonly Find[]>([]);
  zone = $state<Zone>();
  kind = $state<FaultKind>();
  card = $state<string>();
  #past = $state.raw<readonly (readonly Find[])[]>([]);

  readonly #clues: Clues;
  readonly #here = $derived.by(() => (this.zone ? (this.#clues.get(this.zone) ?? []) : []));
  readonly kinds = $derived.by(() => this.#here.map(({ kind }) => kind));
  readonly suspects = $derived.by(
    (): readonly Suspect[] => this.#here.find(({ kind }) => kind === this.kind)?.suspects ?? [],
  );

  constructor(clues: Clues) {
    this.#clues = clues;
    this.zones = [...clues.keys()];
  }

  /** Another place asks anew what is wrong there, as its cards are others. */
  point(zone: Zone | undefined): void {
    this.zone = zone;
    if (this.kind && !this.kinds.includes(this.kind)) this.kind = undefined;
    this.#choose();
  }

  say(kind: FaultKind): void {
    this.kind = kind;
    this.#choose();
  }

  /** Where only one card comes into question it need not be asked for. */
  #choose(): void {
    const known = this.suspects.map(({ card }) => card as string);
    if (known.length === 1) this.card = known[0];
    else if (this.card !== undefined && !known.includes(this.card)) this.card = undefined;
  }

  get isReady(): boolean {
    return this.zone !== undefined && this.kind !== undefined && this.card !== undefined;
  }

  /** Whether the very same stands noted already. */
  get isNoted(): boolean {
    return this.finds.some(
      ({ zone, kind, card }) => zone === this.zone && kind === this.kind && card === this.card,
    );
  }

  note(): void {
    const { zone, kind, card } = this;
    if (!zone || !kind || card === undefined || this.isNoted) return;
    this.#change([...this.finds, { zone, kind, card }]);
    [this.zone, this.kind, this.card] = [undefined, undefined, undefined];
  }

  remove(at: number): void {
    this.#change(this.finds.filter((_, place) => place !== at));
  }

  get canUndo(): boolean {
    return this.#past.length > 0;
  }

  undo(): void {
    const before = this.#past.at(-1);
    if (!before) return;
    this.finds = before;
    this.#past = this.#past.slice(0, -1);
  }

  #change(finds: readonly Find[]): void {
    this.#past = [...this.#past, this.finds];
    this.finds = finds;
  }
}
