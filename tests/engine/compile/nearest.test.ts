import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance, nearest } from '#engine/compile/nearest.ts';

const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 6 });

describe('truth', () => {
  it.each([
    ['kitten', 'sitting', 3],
    ['', 'abc', 3],
    ['ca', 'ac', 1],
    // The alignment is optimal under the restriction that no part is edited twice; without it, 2.
    // https://github.com/aallam/string-similarity-kotlin, guides/OptimalStringAlignment.md
    ['ca', 'abc', 3],
    // Damerau-Levenshtein as published; of these none edits a part twice, so that both agree.
    ['mom', 'dad', 3],
    ['dogs', 'dog', 1],
    ['true', 'true', 0],
    ['true', 'false', 4],
    ['tee', 'tree', 1],
    ['email', 'mails', 2],
    ['profit', 'gifts', 5],
    ['saturday', 'sunday', 3],
    // Counted by hand: neighbours exchanged are one edit, one step moved far is two.
    ['abcd', 'acbd', 1],
    ['12345', '51234', 2],
  ])('from "%s" to "%s" it is %i edits', (a, b, edits) => {
    expect(editDistance(a, b)).toBe(edits);
  });

  it('a misspelt id finds the one that was meant', () => {
    expect(nearest('snap-lien', ['prime-wall', 'snap-line', 'strap-line'])).toBe('snap-line');
    expect(nearest('Heigth', ['height', 'width'])).toBe('height');
  });

  it('a word that is like none finds none', () => {
    expect(nearest('torch', ['prime', 'hang'])).toBeUndefined();
    expect(nearest('ab', ['xy'])).toBeUndefined();
    expect(nearest('a', [])).toBeUndefined();
  });
});

describe('laws', () => {
  it('the distance is the same both ways, nothing only from a word to itself', () => {
    fc.assert(
      fc.property(word, word, (a, b) => {
        expect(editDistance(a, b)).toBe(editDistance(b, a));
        expect(editDistance(a, b) === 0).toBe(a === b);
      }),
    );
  });
});
