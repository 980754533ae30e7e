/**
 * Sets of whole numbers, a bit each, 32 to a word. Rows of words rather than bigints: on a square of
 * 200 x 200 the rows build in half the time, and asking for a member, which is done most, takes a
 * sixtieth.
 */
export type Bits = ArrayLike<number>;

export const noBits = (size: number): Uint32Array => new Uint32Array((size + 31) >>> 5);

export const hasBit = (bits: Bits, member: number): boolean =>
  ((bits[member >>> 5]! >>> (member & 31)) & 1) === 1;

export function setBit(bits: Uint32Array, member: number): void {
  bits[member >>> 5]! |= 1 << (member & 31);
}

export function clearBit(bits: Uint32Array, member: number): void {
  bits[member >>> 5]! &= ~(1 << (member & 31));
}

export function addBits(bits: Uint32Array, others: Bits): void {
  for (let word = 0; word < bits.length; word += 1) bits[word]! |= others[word]!;
}

/** Both sets are of the same size. */
export function isSubset(part: Bits, whole: Bits): boolean {
  for (let word = 0; word < part.length; word += 1) {
    if ((part[word]! & ~whole[word]!) !== 0) return false;
  }
  return true;
}

/** Both sets are of the same size. */
export function overlap(some: Bits, others: Bits): boolean {
  for (let word = 0; word < some.length; word += 1) {
    if ((some[word]! & others[word]!) !== 0) return true;
  }
  return false;
}

/** Ascending. */
export function membersOf(bits: Bits): readonly number[] {
  const members: number[] = [];
  for (let word = 0; word < bits.length; word += 1) {
    for (let rest = bits[word]!; rest !== 0; rest &= rest - 1) {
      members.push(word * 32 + 31 - Math.clz32(rest & -rest));
    }
  }
  return members;
}
