import { Gathered } from '../database/gathered.ts';
import type { Database } from '../database/open-database.ts';
import { keep, type Keeping } from './attempts.ts';
import type { Ready } from './ready.ts';

/** Attempts on their way into the records. */
export class Inbox {
  readonly #gathered: Gathered<Ready, Keeping>;

  constructor(database: Database) {
    this.#gathered = new Gathered(database, keep);
  }

  /** Resolves once it is kept for good. Rejects where the records could not take it. */
  keep(ready: Ready): Promise<Keeping> {
    return this.#gathered.add(ready);
  }
}
