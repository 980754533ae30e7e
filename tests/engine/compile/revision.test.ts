import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { revisionOf } from '#engine/compile/revision.ts';

/** The definition itself, in numbers without bounds. */
const fnv1a = (text: string): string => {
  let hash = 0xcbf29ce484222325n;
  for (const byte of new TextEncoder().encode(text)) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
  }
  return hash.toString(16).padStart(16, '0');
};

describe('truth', () => {
  // RFC 9923, the test values of 64-bit FNV-1a.
  it.each([
    ['', 'cbf29ce484222325'],
    ['a', 'af63dc4c8601ec8c'],
    ['foobar', '85944171f73967e8'],
  ])('"%s" has the published value', (text, expected) => {
    expect(revisionOf(text)).toBe(expected);
  });
});

describe('laws', () => {
  it('limbs give what numbers without bounds give', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme-composite', maxLength: 60 }), (text) => {
        expect(revisionOf(text)).toBe(fnv1a(text));
      }),
    );
  });
});
