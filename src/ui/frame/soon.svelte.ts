import { afterPaint } from './after-paint.ts';

/**
 * Work that a press asks for, done once it is painted that the press was taken: on a slow phone the work
 * itself takes longer than a finger waits without pressing again.
 */
export class Soon {
  isTaken = $state(false);
  #act: (() => void) | undefined;
  #leave: (() => void) | undefined;

  /** A press while another is still to be done is one too many, and does nothing. */
  plan(act: () => void): void {
    if (this.#act) return;
    this.#act = act;
    this.isTaken = true;
    this.#leave = afterPaint(() => this.settle());
  }

  /** Does at once what is planned: before anything else happens, or where nothing is painted any more. */
  settle(): void {
    const act = this.#act;
    if (!act) return;
    this.#leave?.();
    this.#act = undefined;
    this.isTaken = false;
    act();
  }
}
