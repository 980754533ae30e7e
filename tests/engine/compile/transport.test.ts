import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compile } from '#engine/compile/compile.ts';
import { fromText, toText } from '#engine/compile/transport.ts';
import { divide } from '#engine/measure/arithmetic.ts';
import { quantity } from '#engine/measure/conversion.ts';
import { rational } from '#engine/measure/rational.ts';
import { unitIds } from '#engine/measure/units.ts';
import { readContentFiles } from '#server/content.ts';
import { soundFolder } from '../../content/fixtures.ts';

const sound = compile(readContentFiles(soundFolder)).content;

const anyQuantity = fc
  .tuple(fc.bigInt({ min: -(10n ** 30n), max: 10n ** 30n }), fc.constantFrom(...unitIds))
  .map(([amount, unit]) => quantity(rational(amount, 3n), unit));

describe('truth', () => {
  it('a product of units keeps its dimension', () => {
    const coverage = divide(quantity(250, 'ft2'), quantity(1, 'gal'));
    expect(fromText(toText(coverage))).toEqual(coverage);
  });

  it('text of another making is refused', () => {
    expect(() => fromText('[["Quantity",1],{"value":2},"8 in"]')).toThrow(RangeError);
    expect(() => fromText('{')).toThrow();
  });
});

describe('laws', () => {
  it('content comes back as it was, with its maps and the order in them', () => {
    const back = fromText(toText(sound));
    expect(back).toEqual(sound);
    expect(toText(back)).toBe(toText(sound));
  });

  it('any quantity comes back exactly', () => {
    fc.assert(
      fc.property(anyQuantity, (given) => {
        const back = fromText(toText({ given })) as { readonly given: typeof given };
        expect(back.given).toEqual(given);
        expect(back.given.value.equals(given.value as never)).toBe(true);
      }),
    );
  });
});
