import fc from 'fast-check';
import { dimension, dimensionNames, dimensionOf } from '#engine/measure/dimension.ts';
import type { DimensionName } from '#engine/measure/dimension.ts';
import { ofBaseUnits } from '#engine/measure/quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { rational } from '#engine/measure/rational.ts';
import type { Rational } from '#engine/measure/rational.ts';

export const rationals: fc.Arbitrary<Rational> = fc.oneof(
  fc
    .tuple(fc.bigInt(-(10n ** 6n), 10n ** 6n), fc.bigInt(1n, 4096n))
    .map(([n, d]) => rational(n, d)),
  fc
    .tuple(fc.bigInt(-(10n ** 60n), 10n ** 60n), fc.bigInt(1n, 10n ** 60n))
    .map(([n, d]) => rational(n, d)),
);

export const aboveZero: fc.Arbitrary<Rational> = rationals
  .filter((value) => !value.equals(0n))
  .map((value) => value.abs());

export const quantitiesOf = <D extends Exclude<DimensionName, 'product'>>(
  name: D,
): fc.Arbitrary<Quantity<D>> =>
  (name === 'temperature' ? aboveZero : rationals).map((value) =>
    ofBaseUnits(value, dimension(name)),
  );

const powers = fc.integer({ min: -3, max: 3 });

/** Of any dimension, products among them. */
export const quantities: fc.Arbitrary<Quantity> = fc.oneof(
  fc.constantFrom(...dimensionNames).chain((name): fc.Arbitrary<Quantity> => quantitiesOf(name)),
  fc
    .tuple(
      rationals,
      fc.record({
        length: powers,
        time: powers,
        temperature: powers,
        angle: powers,
        money: powers,
      }),
    )
    .map(([value, powers]) => ofBaseUnits(value, dimensionOf(powers))),
);

export const lengths = quantitiesOf('length');
