/**
 * Keeps editions in the caches of the browser: fetches one as a whole, says which are here, turns to
 * another, and throws away what is no longer needed. What was fetched before a signal was lost stays,
 * so that the next try goes on from there.
 */
import {
  type Edition,
  editionOn,
  isSame,
  shelfOf,
  shelves,
  type Standing,
  usedShelf,
} from './edition.ts';

type Fetch = (address: string, how: RequestInit) => Promise<Response>;
type Caches = Pick<CacheStorage, 'open' | 'keys' | 'match' | 'delete'>;

// Entries that are no addresses of the app: a shelf with the mark holds all of its edition.
const wholeMark = '/whole-edition';
const usedMark = '/used-edition';

// As many as a browser opens to one server at a time.
const sideBySide = 6;

/** Files named after what is in them: a copy from any edition is right, and so is any cache's. */
const isUnchanging = (address: string): boolean => address.startsWith('/_app/immutable/');

export class Keeper {
  readonly #caches: Caches;
  readonly #fetch: Fetch;
  #used: Promise<Edition | undefined> | undefined;

  constructor(caches: Caches, fetch: Fetch) {
    this.#caches = caches;
    this.#fetch = fetch;
  }

  used(): Promise<Edition | undefined> {
    return (this.#used ??= this.#readUsed());
  }

  /** `build` is the one that this keeper came with: it makes nothing ready for others. */
  async standing(build: string): Promise<Standing> {
    const used = await this.used();
    const newer = (await this.#whole()).filter(
      (edition) => edition.build === build && !isSame(edition, used),
    );
    return { used, ready: newer.at(-1) };
  }

  /** What the edition in use has at an address. */
  async find(address: string): Promise<Response | undefined> {
    const used = await this.used();
    return used && this.#caches.match(address, { cacheName: shelfOf(used), ignoreVary: true });
  }

  /** Fetches all that is not here yet. Rejects when something cannot be had; nothing in use changes. */
  async keep(edition: Edition, addresses: readonly string[]): Promise<void> {
    const shelf = await this.#caches.open(shelfOf(edition));
    if (await shelf.match(wholeMark)) return;
    const others = await this.#shelvesBeside(edition);
    await inTurn(addresses, async (address) => {
      if (await shelf.match(address)) return;
      const copy = isUnchanging(address) ? await firstMatch(others, address) : undefined;
      await shelf.put(address, copy ?? (await this.#load(address)));
    });
    await shelf.put(wholeMark, Response.json(edition));
  }

  /** Turns to an edition that is here as a whole, and drops all others. False where it is not. */
  async use(edition: Edition): Promise<boolean> {
    if (!(await this.#whole()).some((kept) => isSame(kept, edition))) return false;
    const mark = await this.#caches.open(usedShelf);
    await mark.put(usedMark, Response.json(edition));
    this.#used = undefined;
    await this.tidy(edition);
    return true;
  }

  /** Drops every shelf but that of the edition in use and the one named. */
  async tidy(newest: Edition): Promise<void> {
    const used = await this.used();
    const needed = [usedShelf, shelfOf(newest), ...(used ? [shelfOf(used)] : [])];
    const names = await this.#caches.keys();
    const old = names.filter((name) => name.startsWith(shelves) && !needed.includes(name));
    await Promise.all(old.map((name) => this.#caches.delete(name)));
  }

  async #readUsed(): Promise<Edition | undefined> {
    const mark = await this.#caches.open(usedShelf);
    const kept = await mark.match(usedMark);
    const used = kept && ((await kept.json()) as Edition);
    // A browser short of room may have dropped the edition and left the mark.
    return (await this.#whole()).find((edition) => isSame(edition, used));
  }

  async #whole(): Promise<readonly Edition[]> {
    const editions = (await this.#caches.keys()).flatMap((name) => editionOn(name) ?? []);
    const marks = await Promise.all(
      editions.map((edition) => this.#caches.match(wholeMark, { cacheName: shelfOf(edition) })),
    );
    return editions.filter((_, place) => marks[place]);
  }

  async #shelvesBeside(edition: Edition): Promise<readonly Cache[]> {
    const names = (await this.#caches.keys()).filter(
      (name) => editionOn(name) && name !== shelfOf(edition),
    );
    return Promise.all(names.map((name) => this.#caches.open(name)));
  }

  async #load(address: string): Promise<Response> {
    const response = await this.#fetch(address, {
      cache: isUnchanging(address) ? 'default' : 'no-cache',
    });
    // Content that has moved on while it was fetched leads elsewhere.
    if (response.ok && !response.redirected) return response;
    throw new Error(`${address} was answered with ${response.status}.`);
  }
}

async function firstMatch(
  shelves: readonly Cache[],
  address: string,
): Promise<Response | undefined> {
  for (const shelf of shelves) {
    const found = await shelf.match(address);
    if (found) return found;
  }
  return undefined;
}

async function inTurn<T>(all: readonly T[], each: (one: T) => Promise<void>): Promise<void> {
  const waiting = [...all];
  const lane = async (): Promise<void> => {
    for (let one = waiting.shift(); one !== undefined; one = waiting.shift()) await each(one);
  };
  await Promise.all(Array.from({ length: sideBySide }, lane));
}
