import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isUuid, uuid7 } from '#engine/uuid.ts';

const instant = fc.integer({ min: 0, max: 2 ** 48 - 1 });
const chance = fc.uint8Array({ minLength: 10, maxLength: 10 });

describe('truth', () => {
  test('the published example comes out', () => {
    // RFC 9562, 2024, appendix A.6: rand_a is cc3, rand_b 18c4dc0c0c07398f.
    const random = Uint8Array.of(0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f);
    expect(uuid7(0x017f22e279b0, random)).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f');
  });
});

describe('laws', () => {
  test('is a UUID of version 7 and the RFC variant', () => {
    fc.assert(
      fc.property(instant, chance, (time, random) => {
        const id = uuid7(time, random);
        expect(isUuid(id)).toBe(true);
        expect(id[14]).toBe('7');
        expect('89ab').toContain(id[19]);
      }),
    );
  });

  test('sorts by the time it was made', () => {
    fc.assert(
      fc.property(instant, instant, chance, chance, (one, other, a, b) => {
        fc.pre(one !== other);
        expect(uuid7(one, a) < uuid7(other, b)).toBe(one < other);
      }),
    );
  });

  test('too little chance is refused', () => {
    expect(() => uuid7(0, new Uint8Array(9))).toThrow(RangeError);
  });
});
