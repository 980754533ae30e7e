/**
 * Many small writes in one commit. A commit waits for the disk, so all that arrive meanwhile share the next
 * one. An answer is given only after the commit: what was acknowledged is kept.
 */
import type { Kind } from './kind.ts';
import type { Database, Db } from './open-database.ts';
import { outageOf } from './outage.ts';

/** Writes a whole batch, or throws; each outcome stands at its place. */
export type Write<Given, Outcome> = (
  trx: Db,
  kind: Kind,
  batch: readonly Given[],
) => Promise<readonly Outcome[]>;

type Waiting<Given, Outcome> = {
  readonly given: Given;
  readonly resolve: (outcome: Outcome) => void;
  readonly reject: (reason: unknown) => void;
};

/** More would make a statement longer than a database takes (PostgreSQL: 65,535 values). */
const mostAtOnce = 200;

export class Gathered<Given, Outcome> {
  readonly #database: Database;
  readonly #write: Write<Given, Outcome>;
  #waiting: Waiting<Given, Outcome>[] = [];
  #isBusy = false;

  constructor(database: Database, write: Write<Given, Outcome>) {
    this.#database = database;
    this.#write = write;
  }

  /** Resolves once it is written for good. Rejects where the records could not take it. */
  add(given: Given): Promise<Outcome> {
    return new Promise((resolve, reject) => {
      this.#waiting.push({ given, resolve, reject });
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

  async #commit(batch: readonly Waiting<Given, Outcome>[]): Promise<void> {
    try {
      const { db, kind } = this.#database;
      const outcomes = await db.transaction().execute((trx) =>
        this.#write(
          trx,
          kind,
          batch.map(({ given }) => given),
        ),
      );
      batch.forEach(({ resolve }, place) => resolve(outcomes[place]!));
    } catch (error) {
      // One that cannot be kept must not take the others along; where the records cannot be written
      // none of them can be kept, and trying each would only keep all the rest waiting.
      if (batch.length === 1 || outageOf(error)) batch.forEach(({ reject }) => reject(error));
      else for (const one of batch) await this.#commit([one]);
    }
  }
}
