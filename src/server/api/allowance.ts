/**
 * How often each token may ask, counted in the memory of one process: where several serve the same records,
 * each allows as much.
 */
export type Limit = { readonly most: number; readonly seconds: number };

export const perToken: Limit = { most: 120, seconds: 60 };

/** Counts that have run out are swept away once there are so many. */
const sweptAt = 10_000;

export class Allowance {
  readonly #counts = new Map<string, { count: number; until: number }>();
  readonly #limit: Limit;

  constructor(limit: Limit = perToken) {
    this.#limit = limit;
  }

  get size(): number {
    return this.#counts.size;
  }

  /** Counts once more. The seconds to wait where that was too often, 0 otherwise. */
  take(key: string, now: Date): number {
    const at = now.getTime();
    const span = this.#limit.seconds * 1000;
    const known = this.#counts.get(key);
    // A clock that was set back starts the while anew.
    const isOver = !known || known.until <= at || known.until > at + span;
    const counted = isOver ? { count: 1, until: at + span } : known;
    if (!isOver) counted.count += 1;
    this.#counts.set(key, counted);
    if (this.#counts.size > sweptAt) this.#sweep(at);
    if (counted.count <= this.#limit.most) return 0;
    return Math.max(1, Math.ceil((counted.until - at) / 1000));
  }

  #sweep(at: number): void {
    for (const [key, { until }] of this.#counts) if (until <= at) this.#counts.delete(key);
  }
}
