import type { Language } from '#engine/text.ts';
import { amountIn, unitOf } from './conversion.ts';
import type { UnitOf } from './conversion.ts';
import type { DimensionName } from './dimension.ts';
import { formatDecimal, formatMixed } from './format-number.ts';
import type { Quantity } from './quantity.ts';
import { roundToMultiple } from './rational.ts';
import type { Rational } from './rational.ts';

/** How an amount is written in its unit. */
export interface AmountStyle<D extends DimensionName> {
  readonly unit: UnitOf<D>;
  /** At most so many decimals; two unless stated. Money always shows all of them. */
  readonly places?: number;
  /** Write a mixed number instead, to the nearest multiple of this many of the unit. */
  readonly nearest?: Rational;
}

const singular = (amount: string): boolean => amount === '1' || amount === '-1';

/**
 * The quantity in that unit, rounded, an exact half away from zero: `24.3 ft`, `250 ft²/gal`, `70 °F`,
 * `45°`, `$12.50`, and in Spanish `24.3 pies`. Throws a DimensionError where the unit measures
 * something else.
 */
export const formatQuantity = <D extends DimensionName>(
  q: Quantity<D>,
  how: UnitOf<NoInfer<D>> | AmountStyle<NoInfer<D>>,
  language: Language = 'en',
): string => {
  const style: AmountStyle<D> = typeof how === 'object' && 'unit' in how ? how : { unit: how };
  const { label, set } = unitOf(style.unit);
  const amount = amountIn(q, style.unit);
  const number =
    style.nearest === undefined
      ? formatDecimal(amount, style.places ?? 2, set === 'before')
      : formatMixed(roundToMultiple(amount, style.nearest));
  const word = label[language][singular(number) ? 0 : 1];
  if (set === 'before') return number.replace(/^-?/, (sign) => `${sign}${word}`);
  return `${number}${set === 'after' && word !== '' ? ' ' : ''}${word}`;
};
