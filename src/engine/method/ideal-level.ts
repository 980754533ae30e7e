import { clearBit, hasBit, isSubset, noBits, setBit, type Bits } from './bits.ts';
import type { PartialOrder } from './partial-order.ts';

/**
 * The order ideals of one size (sets of steps that hold, with any step, all that must come before it),
 * each with the number of correct orders its steps can be done in. A hash table by open addressing:
 * with millions of ideals it takes half the time of a Map.
 */
export class IdealLevel {
  readonly #words: number;
  readonly #counts: bigint[] = [];
  #ideals: Uint32Array;
  #slots = new Int32Array(32).fill(-1);

  constructor(steps: number) {
    this.#words = noBits(steps).length;
    this.#ideals = new Uint32Array(16 * this.#words);
  }

  get size(): number {
    return this.#counts.length;
  }

  idealAt(entry: number): Uint32Array {
    return this.#ideals.slice(entry * this.#words, (entry + 1) * this.#words);
  }

  countAt(entry: number): bigint {
    return this.#counts[entry]!;
  }

  /** 0 for what is no ideal of this size. */
  countOf(ideal: Bits): bigint {
    return this.#counts[this.#slots[this.#slotOf(ideal)]!] ?? 0n;
  }

  add(ideal: Bits, count: bigint): void {
    const slot = this.#slotOf(ideal);
    const entry = this.#slots[slot]!;
    if (entry !== -1) {
      this.#counts[entry]! += count;
      return;
    }
    if (2 * this.size === this.#slots.length) {
      this.#grow();
      this.add(ideal, count);
      return;
    }
    this.#slots[slot] = this.size;
    this.#ideals.set(ideal, this.size * this.#words);
    this.#counts.push(count);
  }

  /** Where the ideal stands, or the empty slot where it would. */
  #slotOf(ideal: Bits): number {
    let hash = 0;
    for (let word = 0; word < this.#words; word += 1) {
      hash = Math.imul(hash ^ ideal[word]!, 0x9e3779b1);
      hash ^= hash >>> 15;
    }
    const last = this.#slots.length - 1;
    let slot = hash & last;
    while (this.#slots[slot] !== -1 && !this.#holds(this.#slots[slot]!, ideal)) {
      slot = (slot + 1) & last;
    }
    return slot;
  }

  #holds(entry: number, ideal: Bits): boolean {
    for (let word = 0; word < this.#words; word += 1) {
      if (this.#ideals[entry * this.#words + word] !== ideal[word]) return false;
    }
    return true;
  }

  #grow(): void {
    const ideals = new Uint32Array(2 * this.#ideals.length);
    ideals.set(this.#ideals);
    this.#ideals = ideals;
    this.#slots = new Int32Array(2 * this.#slots.length).fill(-1);
    for (let entry = 0; entry < this.size; entry += 1) {
      this.#slots[this.#slotOf(this.idealAt(entry))] = entry;
    }
  }
}

/**
 * Level after level from the empty set, which can be done in one way, to the full one. Ends with
 * undefined where there are more than `limit` ideals.
 */
export function* levelsOf(
  order: PartialOrder,
  limit: number,
): Generator<IdealLevel | undefined, void> {
  let level: IdealLevel | undefined = new IdealLevel(order.size);
  level.add(noBits(order.size), 1n);
  let room = limit - 1;
  for (let steps = 0; steps <= order.size && level; steps += 1) {
    yield level;
    level = nextLevel(order, level, room);
    room -= level?.size ?? 0;
  }
  if (!level) yield undefined;
}

function nextLevel(order: PartialOrder, level: IdealLevel, room: number): IdealLevel | undefined {
  const next = new IdealLevel(order.size);
  for (let entry = 0; entry < level.size; entry += 1) {
    const ideal = level.idealAt(entry);
    const count = level.countAt(entry);
    for (let step = 0; step < order.size; step += 1) {
      if (hasBit(ideal, step) || !isSubset(order.before[step]!, ideal)) continue;
      setBit(ideal, step);
      next.add(ideal, count);
      clearBit(ideal, step);
    }
    if (next.size > room) return undefined;
  }
  return next;
}
