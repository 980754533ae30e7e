/**
 * Seeded chance. The same seed gives the same draws on every machine, for ever: what was drawn for a
 * person years ago can be drawn again.
 *
 * xoroshiro128+ (D. Blackman, S. Vigna, "Scrambled linear pseudorandom number generators", ACM TOMS
 * 47(4), 2021), as in pure-rand, which gives 32 bits a draw and unbiased ranges by rejection. Its four
 * words of state come from the seed's text by FNV-1a (G. Fowler, L. C. Noll, K.-P. Vo; RFC 9923) and
 * SplitMix64 (G. Steele, D. Lea, C. Flood, OOPSLA 2014), so that seeds that resemble each other start
 * far apart. Not for secrets.
 */
import { uniformBigInt } from 'pure-rand/distribution/uniformBigInt';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plusFromState } from 'pure-rand/generator/xoroshiro128plus';
import type { JumpableRandomGenerator } from 'pure-rand/types/JumpableRandomGenerator';

/**
 * A stream of chance. It is mutable: each draw moves it on, so whoever is handed one may use it up,
 * and its draws depend on their order. `stateOf` is a still of it that can be stored.
 */
export type Random = JumpableRandomGenerator;

/** The four words of a stream's state, as plain numbers. */
export type RandomState = readonly number[];

const word64 = (value: bigint): bigint => BigInt.asUintN(64, value);

/** FNV-1a of 64 bits over UTF-16 units; for ASCII the same as over bytes. */
export const hashText = (text: string): bigint => {
  let hash = 0xcbf29ce484222325n;
  for (let i = 0; i < text.length; i += 1) {
    hash = word64((hash ^ BigInt(text.charCodeAt(i))) * 0x100000001b3n);
  }
  return hash;
};

/** The first `count` outputs of SplitMix64, 64 bits each. */
export const splitMix = (seed: bigint, count: number): readonly bigint[] =>
  Array.from({ length: count }, (_, i) => {
    let z = word64(seed + BigInt(i + 1) * 0x9e3779b97f4a7c15n);
    z = word64((z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n);
    z = word64((z ^ (z >> 27n)) * 0x94d049bb133111ebn);
    return z ^ (z >> 31n);
  });

/**
 * A new stream. A seed is its text: 42 and '42' start the same one. Give each purpose its own seed, as
 * in `${seed}/takeoff`, and no draw of one shifts another. Throws on a number that is not whole.
 */
export const randomFrom = (seed: number | string): Random => {
  if (typeof seed === 'number' && !Number.isSafeInteger(seed)) {
    throw new RangeError(`A seed is a whole number or a text, not ${seed}.`);
  }
  const words = splitMix(hashText(String(seed)), 2).flatMap((word) => [
    Number(BigInt.asIntN(32, word >> 32n)),
    Number(BigInt.asIntN(32, word)),
  ]);
  return xoroshiro128plusFromState(words);
};

export const stateOf = (random: Random): RandomState => random.getState();

/** The stream that stood at this state; what it draws next is what that one would have drawn. */
export const randomAt = (state: RandomState): Random => xoroshiro128plusFromState(state);

/** A whole number from low to high, both included, each as likely. */
export const whole = (random: Random, low: number, high: number): number => {
  if (!Number.isSafeInteger(low) || !Number.isSafeInteger(high) || low > high) {
    throw new RangeError(`No whole number lies from ${low} to ${high}.`);
  }
  return uniformInt(random, low, high);
};

/** From 0 up to but not including 1, in steps of 2^-30. */
export const fraction = (random: Random): number => whole(random, 0, 2 ** 30 - 1) / 2 ** 30;

/** A whole number of any size from 0 up to but not including n, each as likely. */
export const below = (random: Random, n: bigint): bigint => {
  if (n <= 0n) throw new RangeError(`No whole number from 0 lies below ${n}.`);
  return uniformBigInt(random, 0n, n - 1n);
};

export const pick = <T>(random: Random, items: readonly T[]): T => {
  if (items.length === 0) throw new RangeError('There is nothing to pick from.');
  return items[whole(random, 0, items.length - 1)] as T;
};

/** A new list in an order of which each is as likely (Fisher and Yates; R. Durstenfeld, CACM 7(7), 1964). */
export const shuffle = <T>(random: Random, items: readonly T[]): T[] => {
  const shuffled = [...items];
  for (let last = shuffled.length - 1; last > 0; last -= 1) {
    const other = whole(random, 0, last);
    [shuffled[last], shuffled[other]] = [shuffled[other] as T, shuffled[last] as T];
  }
  return shuffled;
};

/**
 * An item with a chance in proportion to its weight, exactly. Weights are whole, none below 0 and not
 * all 0: numbers of orders, which no float can hold, serve as they are.
 */
export const weightedPick = <T>(
  random: Random,
  items: readonly T[],
  weightOf: (item: T) => bigint,
): T => {
  const weighed = items.map((item) => ({ item, weight: weightOf(item) }));
  if (weighed.some(({ weight }) => weight < 0n)) throw new RangeError('A weight is 0 or more.');
  const total = weighed.reduce((sum, { weight }) => sum + weight, 0n);
  if (total === 0n) throw new RangeError('There is nothing with a weight to pick from.');
  let left = below(random, total);
  for (const { item, weight } of weighed) {
    if (left < weight) return item;
    left -= weight;
  }
  throw new RangeError('Weights do not add up.');
};
