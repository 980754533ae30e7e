import { rational, type Rational } from '#engine/measure/rational.ts';
import type { Text } from '#engine/text.ts';
import type { RoundRule } from './family.ts';
import { rounded } from './rounding.ts';

/** How far off an answer is when two units were taken for one, and which two. */
export type Mixed = { readonly times: bigint; readonly units: Text };

const mixes: readonly Mixed[] = [
  { times: 12n, units: { en: 'feet and inches', es: 'pies y pulgadas' } },
  { times: 144n, units: { en: 'square feet and square inches', es: 'pies y pulgadas cuadradas' } },
  { times: 1728n, units: { en: 'cubic feet and cubic inches', es: 'pies y pulgadas cúbicas' } },
  { times: 128n, units: { en: 'gallons and fluid ounces', es: 'galones y onzas líquidas' } },
  { times: 231n, units: { en: 'gallons and cubic inches', es: 'galones y pulgadas cúbicas' } },
  { times: 60n, units: { en: 'minutes and hours', es: 'minutos y horas' } },
];

/** Too few to tell one factor from another. */
const fewest = 4n;
const tolerance = rational(1, 200);

/** The two units that were mixed, where the answer is off by just their factor. */
export function mixedUnits(
  given: Rational,
  exact: Rational,
  round: RoundRule | undefined,
): Mixed | undefined {
  return mixes.find(({ times }) =>
    [exact.mul(times), exact.div(times)].some((value) => {
      const enough = round ? given.gte(round.to.value.mul(fewest)) : given.gt(0n);
      const off = given.sub(value).abs();
      return enough && (given.equals(rounded(value, round)) || off.lte(value.abs().mul(tolerance)));
    }),
  );
}
