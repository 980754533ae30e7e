import type { SearchEntry } from './search-entry.ts';
import type { SearchIndex } from './search-index.ts';

/**
 * The state of a search: the index is loaded and built when the first search opens, and what is found
 * follows what is typed.
 */
export class Search {
  query = $state('');
  state = $state<'opening' | 'open' | 'failed'>('opening');
  #index = $state.raw<SearchIndex>();

  readonly found: readonly SearchEntry[] = $derived(this.#index?.find(this.query) ?? []);

  constructor(query: string) {
    this.query = query;
  }

  async open(load: () => Promise<readonly SearchEntry[]>): Promise<void> {
    this.state = 'opening';
    try {
      const [{ searchIndex }, entries] = await Promise.all([import('./search-index.ts'), load()]);
      this.#index = searchIndex(entries);
      this.state = 'open';
    } catch {
      this.state = 'failed';
    }
  }
}
