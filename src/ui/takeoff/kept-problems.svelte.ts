import { isKeptProblem, type KeptProblem } from '#engine/takeoff/kept-problem.ts';
import type { Store } from '#ui/attempts/browser-store.ts';

const drawer = 'takeoff/';

/** The problems that a browser keeps, the latest first. What it cannot read there is left alone. */
export class KeptProblems {
  kept = $state.raw<readonly KeptProblem[]>([]);
  /** Taken away by the last press, until they are brought back or the page is left. */
  removed = $state.raw<readonly KeptProblem[]>([]);
  readonly #store: Store;

  constructor(store: Store) {
    this.#store = store;
  }

  recall(): void {
    this.#show(
      this.#store
        .names(drawer)
        .map((name) => this.#store.read(name))
        .filter(isKeptProblem),
    );
  }

  /** Whether the browser will still have it tomorrow. */
  keep(problem: KeptProblem): boolean {
    this.#show([...this.kept.filter(({ id }) => id !== problem.id), problem]);
    return this.#store.write(drawer + problem.id, problem);
  }

  removeAll(): void {
    this.removed = this.kept;
    for (const { id } of this.removed) this.#store.remove(drawer + id);
    this.#show([]);
  }

  bringBack(): void {
    for (const problem of this.removed) this.keep(problem);
    this.removed = [];
  }

  #show(problems: readonly KeptProblem[]): void {
    this.kept = problems.toSorted((a, b) => b.at.localeCompare(a.at));
  }
}
