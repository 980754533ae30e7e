/**
 * What a page knows of the editions that its browser keeps: whether the app opens here without signal,
 * and whether something newer waits. Where the browser keeps nothing, the app works as long as there is
 * a signal, and says so.
 */
import { untrack } from 'svelte';
import { type Edition, isSame, type Standing } from './edition.ts';
import { type Ask, standingFrom } from './post.ts';

/** `insecure`: browsers keep pages only for https, and for the machine itself. */
export type Keeping = 'unknown' | 'keeping' | 'kept' | 'insecure' | 'refused';

type Workers = Pick<
  ServiceWorkerContainer,
  'register' | 'ready' | 'addEventListener' | 'removeEventListener'
>;

/** What the browser has to give. */
export type Browser = {
  /** Undefined, or throws, where pages may not keep anything. */
  readonly workers: () => Workers | undefined;
  readonly isSecure: () => boolean;
  readonly reload: () => void;
};

export class Offline {
  keeping = $state<Keeping>('unknown');
  #standing = $state.raw<Standing>();
  #own = $state.raw<Edition>();
  #holds = $state(0);
  #taken = $state.raw<Edition>();
  #workers: Workers | undefined;
  #registration: ServiceWorkerRegistration | undefined;
  readonly #browser: Browser;

  constructor(browser: Browser) {
    this.#browser = browser;
  }

  /** Another window has turned to another edition: this page is the last of its kind. */
  readonly isOld = $derived.by(() => {
    const used = this.#standing?.used;
    return used !== undefined && this.#own !== undefined && !isSame(used, this.#own);
  });

  readonly isTaking = $derived.by(() => this.#taken !== undefined);

  /** Something newer waits, and nothing is under way that it could disturb. */
  readonly isAnnounced = $derived.by(
    () => this.#holds === 0 && (this.isOld || this.#standing?.ready !== undefined),
  );

  /** Has the browser keep the edition that this page is made of. Returns the end of it. */
  start(own: Edition | undefined): () => void {
    this.#own = own;
    const workers = this.#findWorkers();
    if (!workers) return () => undefined;
    this.#workers = workers;
    const hear = ({ data }: MessageEvent) => this.#hear(standingFrom(data));
    workers.addEventListener('message', hear);
    this.keeping = 'keeping';
    void this.#register(workers);
    return () => workers.removeEventListener('message', hear);
  }

  /** Asks whether there is anything newer, or goes on with what could not be kept before. */
  look(): void {
    if (this.#workers) void this.#register(this.#workers);
  }

  /** Nothing is announced until what is returned is called: somebody is at work. */
  hold(): () => void {
    const count = (step: number) => untrack(() => (this.#holds += step));
    let isOver = false;
    count(1);
    return () => {
      if (!isOver) count(-1);
      isOver = true;
    };
  }

  /** Turns to what was announced. The page is made anew from it. */
  take(): void {
    const ready = this.#standing?.ready;
    if (!ready) {
      this.#browser.reload();
      return;
    }
    this.#taken = ready;
    this.#ask({ ask: 'use', edition: ready });
  }

  #findWorkers(): Workers | undefined {
    try {
      const workers = this.#browser.workers();
      if (!workers) this.keeping = this.#browser.isSecure() ? 'refused' : 'insecure';
      return workers;
    } catch {
      this.keeping = 'refused';
      return undefined;
    }
  }

  async #register(workers: Workers): Promise<void> {
    try {
      this.#registration = await workers.register('/service-worker.js');
    } catch {
      // Without signal nothing is registered anew, and what is kept still serves.
      if (this.keeping !== 'kept') this.keeping = 'refused';
      return;
    }
    // A browser told to have no workers answers with nothing.
    if (!this.#registration) {
      this.keeping = 'refused';
      return;
    }
    // A new build comes as a new worker.
    this.#registration.update().catch(() => undefined);
    await workers.ready;
    this.#ask({ ask: 'standing' });
    this.#ask({ ask: 'look' });
  }

  #ask(ask: Ask): void {
    this.#registration?.active?.postMessage(ask);
  }

  #hear(standing: Standing | undefined): void {
    if (!standing) return;
    this.#standing = standing;
    if (standing.used) this.keeping = 'kept';
    if (!this.#taken) return;
    if (isSame(standing.used, this.#taken)) this.#browser.reload();
    else if (!isSame(standing.ready, this.#taken)) this.#taken = undefined;
  }
}

export const offline = new Offline({
  workers: () => navigator.serviceWorker,
  isSecure: () => isSecureContext,
  reload: () => location.reload(),
});
