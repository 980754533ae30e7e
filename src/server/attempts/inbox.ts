/**
 * Attempts on their way into the records. A commit waits for the disk, so all that arrive meanwhile share
 * the next one. An answer is given only after the commit: what was acknowledged is kept.
 */
import type { Database } from '../database/open-database.ts';
import { outageOf } from '../database/outage.ts';
import { keep, type Keeping } from './attempts.ts';
import type { Ready } from './ready.ts';

type Waiting = {
  readonly ready: Ready;
  readonly resolve: (keeping: Keeping) => void;
  readonly reject: (reason: unknown) => void;
};

/** More would make a statement longer than a database takes (PostgreSQL: 65,535 values). */
const mostAtOnce = 200;

export class Inbox {
  readonly #database: Database;
  #waiting: Waiting[] = [];
  #isBusy = false;

  constructor(database: Database) {
    this.#database = database;
  }

  /** Resolves once it is kept for good. Rejects where the records could not take it. */
  keep(ready: Ready): Promise<Keeping> {
    return new Promise((resolve, reject) => {
      this.#waiting.push({ ready, resolve, reject });
      if (!this.#isBusy) void this.#empty();
    });
  }

  async #empty(): Promise<void> {
    this.#isBusy = true;
    // Whatever comes in this turn of the loop goes along.
    await new Promise<void>((resolve) => setImmediate(resolve));
    while (this.#waiting.length > 0) await this.#commit(this.#waiting.splice(0, mostAtOnce));
    this.#isBusy = false;
  }

  async #commit(batch: readonly Waiting[]): Promise<void> {
    try {
      const { db, kind } = this.#database;
      const keeping = await db.transaction().execute((trx) =>
        keep(
          trx,
          kind,
          batch.map(({ ready }) => ready),
        ),
      );
      batch.forEach(({ resolve }, place) => resolve(keeping[place]!));
    } catch (error) {
      // One that cannot be kept must not take the others along; where the records cannot be written
      // none of them can be kept, and trying each would only keep all the rest waiting.
      if (batch.length === 1 || outageOf(error)) batch.forEach(({ reject }) => reject(error));
      else for (const one of batch) await this.#commit([one]);
    }
  }
}
