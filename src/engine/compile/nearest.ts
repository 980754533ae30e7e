/**
 * The known word that a mistyped one most likely meant: least edit distance, where two letters
 * exchanged count as one edit (optimal string alignment; Damerau, CACM 7, 1964). O(known x length^2).
 */
export function nearest(given: string, known: Iterable<string>): string | undefined {
  let best: string | undefined;
  let least = Math.max(2, Math.floor(given.length / 3)) + 1;
  for (const word of known) {
    if (Math.abs(word.length - given.length) >= least) continue;
    const distance = editDistance(given.toLowerCase(), word.toLowerCase());
    // A word of which nothing is left was not mistyped.
    if (distance < least && distance < word.length) [best, least] = [word, distance];
  }
  return best;
}

export function editDistance(a: string, b: string): number {
  let older: readonly number[] = [];
  let row: readonly number[] = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      let edits = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        edits = Math.min(edits, older[j - 2]! + 1);
      }
      next.push(edits);
    }
    [older, row] = [row, next];
  }
  return row[b.length]!;
}
