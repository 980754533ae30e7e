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
    ['ca', 'abc', 3],
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
