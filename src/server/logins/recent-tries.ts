import type { Limit } from './throttle.ts';

const keysHeld = 20_000;

type While = { readonly until: number; count: number };

/**
 * Tries counted by this process alone and in its memory: for what is asked often and guards nothing but the
 * server's own time. With n processes one address may try n times as often, and after a start anew. Whoever
 * comes from ever more addresses pushes out those that tried longest ago.
 */
export class RecentTries {
  readonly #limit: Limit;
  readonly #held: number;
  readonly #whiles = new Map<string, While>();

  constructor(limit: Limit, held = keysHeld) {
    this.#limit = limit;
    this.#held = held;
  }

  /** Counts one more try. The seconds to wait where there were too many, 0 otherwise. */
  waitFor(key: string, now: Date): number {
    const at = now.getTime();
    const tried = this.#whiles.get(key);
    const span = this.#limit.seconds * 1000;
    // A clock that was set back starts the while anew.
    const isOn = tried !== undefined && tried.until > at && tried.until <= at + span;
    const current = isOn ? tried : { until: at + span, count: 0 };
    current.count += 1;
    // The latest to try stands last.
    this.#whiles.delete(key);
    this.#whiles.set(key, current);
    for (const [oldest] of this.#whiles) {
      if (this.#whiles.size <= this.#held) break;
      this.#whiles.delete(oldest);
    }
    if (current.count <= this.#limit.most) return 0;
    return Math.max(1, Math.ceil((current.until - at) / 1000));
  }
}
