/** A binary heap: the least item first, in O(log size) each way (J. W. J. Williams, CACM 7, 1964). */
export class Heap<Item> {
  readonly #items: Item[] = [];
  readonly #isLess: (a: Item, b: Item) => boolean;

  constructor(isLess: (a: Item, b: Item) => boolean) {
    this.#isLess = isLess;
  }

  push(item: Item): void {
    const items = this.#items;
    let hole = items.length;
    while (hole > 0) {
      const above = (hole - 1) >> 1;
      if (!this.#isLess(item, items[above]!)) break;
      items[hole] = items[above]!;
      hole = above;
    }
    items[hole] = item;
  }

  pop(): Item | undefined {
    const items = this.#items;
    const least = items[0];
    const item = items.pop();
    if (items.length > 0) this.#sink(item!);
    return least;
  }

  #sink(item: Item): void {
    const items = this.#items;
    let hole = 0;
    for (let below = 1; below < items.length; below = 2 * hole + 1) {
      const other = below + 1;
      if (other < items.length && this.#isLess(items[other]!, items[below]!)) below = other;
      if (!this.#isLess(items[below]!, item)) break;
      items[hole] = items[below]!;
      hole = below;
    }
    items[hole] = item;
  }
}
