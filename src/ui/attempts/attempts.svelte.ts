import {
  type AttemptsFile,
  type KeptAttempt,
  keptAttemptsFrom,
  keptFaults,
} from '#engine/marking/kept-attempt.ts';
import { type AttemptFault, refusal } from '#engine/marking/attempt-file.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Store } from './browser-store.ts';

const drawer = 'attempt/';

/** How many attempts of a file were new, and for how many of them the browser has no room. */
export type Added = { readonly added: number; readonly unkept: number };

/** The finished attempts that a browser keeps, the latest first. Each has a name of its own there. */
export class Attempts {
  kept = $state.raw<readonly KeptAttempt[]>([]);
  /** Found in the browser, but not as this program writes them; they are left alone. */
  unreadable = $state.raw<readonly string[]>([]);
  /** Taken away by the last press, until they are brought back or the page is left. */
  removed = $state.raw<readonly KeptAttempt[]>([]);
  readonly #store: Store;

  constructor(store: Store) {
    this.#store = store;
  }

  recall(): void {
    const found = this.#store.names(drawer).map((name) => ({ name, one: this.#store.read(name) }));
    const isRight = ({ one }: { readonly one: unknown }) => keptFaults(one).length === 0;
    this.unreadable = found.filter((each) => !isRight(each)).map(({ name }) => name);
    this.#show(found.filter(isRight).map(({ one }) => one as KeptAttempt));
  }

  find(id: string): KeptAttempt | undefined {
    return this.kept.find((attempt) => attempt.id === id);
  }

  /** Whether the browser will still have it tomorrow. */
  keep(attempt: KeptAttempt): boolean {
    this.#show([...this.kept.filter(({ id }) => id !== attempt.id), attempt]);
    return this.#store.write(drawer + attempt.id, attempt);
  }

  remove(ids: readonly string[]): void {
    this.removed = this.kept.filter(({ id }) => ids.includes(id));
    for (const { id } of this.removed) this.#store.remove(drawer + id);
    this.#show(this.kept.filter(({ id }) => !ids.includes(id)));
  }

  bringBack(): void {
    for (const attempt of this.removed) this.keep(attempt);
    this.removed = [];
  }

  toFile(): string {
    const file: AttemptsFile = { attempts: this.kept };
    return `${JSON.stringify(file, undefined, 2)}\n`;
  }

  /** Adds what a file holds to what is here; a file with a fault adds nothing. */
  addFrom(text: string): Result<Added, readonly AttemptFault[]> {
    const input = jsonFrom(text);
    const read = input.ok ? keptAttemptsFrom(input.value) : input;
    if (!read.ok) return read;
    const fresh = read.value.filter(({ id }) => this.find(id) === undefined);
    const kept = fresh.map((attempt) => this.keep(attempt));
    return ok({ added: fresh.length, unkept: kept.filter((isKept) => !isKept).length });
  }

  #show(attempts: readonly KeptAttempt[]): void {
    this.kept = attempts.toSorted((a, b) => b.finished.localeCompare(a.finished));
  }
}

function jsonFrom(text: string): Result<unknown, readonly AttemptFault[]> {
  try {
    return ok(JSON.parse(text));
  } catch (error) {
    return fault([refusal('NOT_AN_ATTEMPT', '', (error as Error).message)]);
  }
}
