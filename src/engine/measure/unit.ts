import type { Language } from '#engine/text.ts';
import { dimensionOf, dimensionOfProduct } from './dimension.ts';
import type { Dimension, DimensionName } from './dimension.ts';
import { one, zero } from './rational.ts';
import type { Rational } from './rational.ts';

/** What stands beside the number, for exactly one and for any other amount. */
export type Label = Readonly<Record<Language, readonly [one: string, many: string]>>;

/** An amount x of a unit is the quantity x · size + zero, in base units. */
export interface Unit<out D extends DimensionName = DimensionName> {
  readonly dimension: Dimension<D>;
  readonly size: Rational;
  /** Where its zero lies. Only a temperature scale has one other than 0. */
  readonly zero: Rational;
  readonly label: Label;
  /** Where the label stands: after a space, against the number, or before it. */
  readonly set: 'after' | 'against' | 'before';
  /** Units of one series may follow each other in a compound such as 12 ft 6 in. */
  readonly series?: string;
}

/** A unit of the table, with what people write for it besides its id and its labels. */
export interface NamedUnit<out D extends DimensionName = DimensionName> extends Unit<D> {
  readonly aliases: readonly string[];
}

/** The number one: what a ratio counts in. */
export const unitOne: Unit = {
  dimension: dimensionOf({}),
  size: one,
  zero,
  label: { en: ['', ''], es: ['', ''] },
  set: 'after',
};

const relabel = (label: Label, write: (word: string) => string): Label => ({
  en: [write(label.en[0]), write(label.en[1])],
  es: [write(label.es[0]), write(label.es[1])],
});

const exponents: Readonly<Record<number, string>> = { 1: '', 2: '²', 3: '³' };

/** A power other than 0 of a unit, labelled in the singular: `pie²`. */
export const unitPower = (unit: Unit, exponent: number): Unit => {
  const suffix = exponents[exponent] ?? `^${exponent}`;
  const { en, es } = unit.label;
  return {
    dimension: dimensionOfProduct(dimensionOf({}), unit.dimension, exponent),
    size: unit.size.pow(BigInt(exponent)),
    zero,
    label: relabel({ en: [en[0], en[0]], es: [es[0], es[0]] }, (word) => `${word}${suffix}`),
    set: 'after',
  };
};

/** Read from the left: a / b · c is (a / b) · c. */
export const unitProduct = (a: Unit, sign: '/' | '·', b: Unit): Unit => {
  const exponent = sign === '/' ? -1 : 1;
  const join = (language: Language, form: 0 | 1): string =>
    `${a.label[language][form]}${sign}${b.label[language][0]}`;
  return {
    dimension: dimensionOfProduct(a.dimension, b.dimension, exponent),
    size: a.size.mul(b.size.pow(BigInt(exponent))),
    zero,
    label: { en: [join('en', 0), join('en', 1)], es: [join('es', 0), join('es', 1)] },
    set: a === unitOne ? 'against' : 'after',
  };
};
