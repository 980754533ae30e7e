/** The part of a browser's caches that is used here, after the Service Workers standard, 5.4 and 5.5. */
type Shelf = Pick<Cache, 'match' | 'put'>;

class ShelfInMemory implements Shelf {
  readonly #kept = new Map<string, Response>();

  match(address: RequestInfo | URL): Promise<Response | undefined> {
    return Promise.resolve(this.#kept.get(address as string)?.clone());
  }

  put(address: RequestInfo | URL, response: Response): Promise<void> {
    this.#kept.set(address as string, response);
    return Promise.resolve();
  }
}

export function cachesInMemory(): Pick<CacheStorage, 'open' | 'keys' | 'match' | 'delete'> {
  const shelves = new Map<string, ShelfInMemory>();
  return {
    open: (name) => {
      const shelf = shelves.get(name) ?? new ShelfInMemory();
      shelves.set(name, shelf);
      return Promise.resolve(shelf as unknown as Cache);
    },
    match: (address, { cacheName = '' } = {}) =>
      shelves.get(cacheName)?.match(address) ?? Promise.resolve(undefined),
    keys: () => Promise.resolve([...shelves.keys()]),
    delete: (name) => Promise.resolve(shelves.delete(name)),
  };
}
