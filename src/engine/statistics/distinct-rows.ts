/**
 * Which rows of a table of bytes are the same, by hashing (FNV-1a, RFC 9923, with open addressing):
 * rows that hash alike are still compared byte by byte. O(rows x width) as long as few collide.
 */
export type DistinctRows = {
  /** The first row of each kind, in the order in which kinds appear. */
  readonly first: readonly number[];
  /** The kind of each row, by place in `first`. */
  readonly kind: Int32Array;
};

export function distinctRows(bytes: Uint8Array, rows: number, width: number): DistinctRows {
  const slots = new Int32Array(2 ** Math.ceil(Math.log2(rows + 1) + 1)).fill(-1);
  const kind = new Int32Array(rows);
  const first: number[] = [];
  for (let row = 0; row < rows; row += 1) {
    const from = row * width;
    let hash = 0x811c9dc5;
    for (let at = from; at < from + width; at += 1) {
      hash = Math.imul(hash ^ bytes[at]!, 0x01000193);
    }
    // The upper bits of this hash are mixed better than the lower ones.
    let slot = (hash ^ (hash >>> 15)) & (slots.length - 1);
    for (;;) {
      const there = slots[slot]!;
      if (there < 0) {
        slots[slot] = kind[row] = first.length;
        first.push(row);
        break;
      }
      if (areSame(bytes, first[there]! * width, from, width)) {
        kind[row] = there;
        break;
      }
      slot = (slot + 1) & (slots.length - 1);
    }
  }
  return { first, kind };
}

function areSame(bytes: Uint8Array, one: number, other: number, width: number): boolean {
  for (let at = 0; at < width; at += 1) {
    if (bytes[one + at] !== bytes[other + at]) return false;
  }
  return true;
}
