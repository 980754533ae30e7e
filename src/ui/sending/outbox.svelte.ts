/**
 * Sends what was finished on this device to the company of whoever made it: later where there is no signal,
 * once, and as nobody else. It is marked as sent only when the server has said that it is kept; a mark that
 * is lost costs one more sending, which the server knows by the attempt's id.
 */
import type { Store } from '#ui/attempts/browser-store.ts';
import { chosenOf, keepChosen, keepMe, keptMe, type Me, meFrom, type Membership } from './me.ts';
import {
  allMarked,
  drop,
  keepMark,
  keptOf,
  type Mark,
  type Marked,
  markOf,
  type SentKind,
} from './marks.ts';
import { marksFrom } from './receipts.ts';

/** Why what waits is not sent: no signal, or a server that does not take it just now. */
export type Trouble = 'signal' | 'server';

type Means = {
  readonly store: Store;
  readonly fetch: typeof fetch;
  /** Runs one at a time among all windows. */
  readonly alone: (act: () => Promise<void>) => Promise<void>;
};

const batch = 20;
/** A server that has not answered by then will not. */
const patience = 60_000;

export class Outbox {
  me = $state.raw<Me>();
  /** Whether it was asked who is signed in, answered or not. */
  isAsked = $state(false);
  chosen = $state.raw<Membership>();
  trouble = $state<Trouble>();
  isSending = $state(false);
  #marked = $state.raw<readonly Marked[]>([]);
  readonly #means: Means;

  constructor(means: Means) {
    this.#means = means;
  }

  /** Made by whoever is signed in, and not yet sent; of anybody, where nobody is. */
  readonly waiting = $derived.by(() =>
    this.#marked.filter(
      ({ mark }) => mark.state === 'waiting' && mark.owner && this.#isTheirs(mark),
    ),
  );
  /** Made on this device while nobody was signed in. */
  readonly unclaimed = $derived.by(() => {
    const { chosen } = this;
    if (!chosen) return [];
    return this.#marked.filter(
      ({ mark }) =>
        mark.state === 'waiting' && !mark.owner && !mark.declined?.includes(chosen.person),
    );
  });
  readonly refused = $derived.by(() =>
    this.#marked.filter(({ mark }) => mark.state === 'refused' && this.#isTheirs(mark)),
  );

  /** Reads what is here, as after another window changed it. */
  recall(): void {
    const { store } = this.#means;
    this.me = keptMe(store);
    this.chosen = chosenOf(store, this.me);
    this.#marked = allMarked(store);
  }

  markOf(id: string): Mark | undefined {
    return this.#marked.find((one) => one.id === id)?.mark;
  }

  choose(company: string): void {
    keepChosen(this.#means.store, company);
    this.recall();
  }

  /** To be told once an attempt is finished and kept. */
  finished(kind: SentKind, id: string): void {
    const { store } = this.#means;
    if (markOf(store, id)) return;
    const by = chosenOf(store, keptMe(store));
    const owner = by && { owner: { company: by.company, person: by.person } };
    keepMark(store, id, { kind, state: 'waiting', ...owner });
    this.recall();
    void this.send();
  }

  /** Answers whose the unclaimed ones are. */
  claim(isMine: boolean): void {
    const { chosen } = this;
    if (!chosen) return;
    const { company, person } = chosen;
    for (const { id, mark } of this.unclaimed) {
      const declined = [...(mark.declined ?? []), person];
      const next = isMine ? { owner: { company, person } } : { declined };
      keepMark(this.#means.store, id, { ...mark, ...next });
    }
    this.recall();
    if (isMine) void this.send();
  }

  /** Keeps one that was refused as practice of this device. */
  keepHere(id: string): void {
    const mark = markOf(this.#means.store, id);
    if (mark) {
      const { kind, owner } = mark;
      keepMark(this.#means.store, id, { kind, state: 'kept', ...(owner ? { owner } : {}) });
    }
    this.recall();
  }

  drop({ id, mark }: Marked): void {
    drop(this.#means.store, mark.kind, id);
    this.recall();
  }

  /** Asks who is signed in, and sends what is theirs. Never throws. */
  async send(): Promise<void> {
    this.recall();
    if (!(await this.#ask())) return;
    if (this.waiting.length === 0 || !this.me?.name) return;
    await this.#means.alone(() => this.#sendAll());
  }

  /** Whether the server said who is signed in. */
  async #ask(): Promise<boolean> {
    const answer = await this.#answer('/me');
    const me = answer?.ok ? meFrom(await answer.json().catch(() => undefined)) : undefined;
    this.trouble = me ? undefined : answer ? 'server' : 'signal';
    this.isAsked = true;
    if (!me) return false;
    // Who was never signed in here needs nothing kept.
    if (me.name !== null || this.me) keepMe(this.#means.store, me);
    this.recall();
    return true;
  }

  async #sendAll(): Promise<void> {
    this.isSending = true;
    let most = batch;
    for (;;) {
      // Another window may have sent some meanwhile.
      this.recall();
      const first = this.waiting[0];
      if (!first) break;
      const { company } = first.mark.owner!;
      const some = this.waiting
        .filter(({ mark }) => mark.owner!.company === company)
        .slice(0, most);
      const outcome = await this.#sendSome(company, some);
      if (outcome === 'too much' && most > 1) most = Math.ceil(most / 2);
      else if (outcome === 'too much') this.#refuse(first);
      else if (outcome === 'stop') break;
    }
    this.isSending = false;
  }

  async #sendSome(company: string, some: readonly Marked[]): Promise<'done' | 'too much' | 'stop'> {
    const { store } = this.#means;
    const attempts = some.map(({ id, mark: { kind } }) => {
      const kept = keptOf(store, kind, id) as { readonly work?: string } | undefined;
      return { kind, kept, ...(kept?.work ? { work: kept.work } : {}) };
    });
    const answer = await this.#answer(`/company/${company}/attempts`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', accept: 'application/json' },
      body: JSON.stringify({ attempts }),
    });
    if (answer?.status === 413) return 'too much';
    if (answer?.status === 401) keepMe(store, { name: null, companies: [] });
    const said: unknown = answer?.ok ? await answer.json().catch(() => undefined) : undefined;
    const marks = marksFrom(
      said,
      some.map(({ mark }) => mark),
    );
    if (!marks) {
      this.trouble = answer ? 'server' : 'signal';
      this.recall();
      return 'stop';
    }
    some.forEach(({ id }, place) => keepMark(store, id, marks[place]!));
    this.recall();
    return 'done';
  }

  #refuse({ id, mark }: Marked): void {
    const why = [{ code: 'TOO_LARGE', path: '' }];
    const { kind, owner } = mark;
    keepMark(this.#means.store, id, { kind, state: 'refused', why, ...(owner ? { owner } : {}) });
  }

  /** Undefined without signal. */
  #answer(address: string, how: RequestInit = {}): Promise<Response | undefined> {
    const signal = AbortSignal.timeout(patience);
    return this.#means.fetch(address, { ...how, signal }).catch(() => undefined);
  }

  #isTheirs({ owner }: Mark): boolean {
    if (!this.me?.name) return true;
    return this.me.companies.some(({ person }) => person === owner?.person);
  }
}
