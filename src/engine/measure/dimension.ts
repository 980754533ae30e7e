import type { Language, Text } from '#engine/text.ts';

/** What a quantity can be independently of others. An angle is kept apart from plain numbers. */
export const bases = ['length', 'time', 'temperature', 'angle', 'money'] as const;

export type Base = (typeof bases)[number];

/** The power of each base: an area is length², a coverage (ft²/gal) length⁻¹. */
export type Powers = Readonly<Record<Base, number>>;

const powersOf = (some: Partial<Powers>): Powers => ({
  length: 0,
  time: 0,
  temperature: 0,
  angle: 0,
  money: 0,
  ...some,
});

const named = {
  length: powersOf({ length: 1 }),
  area: powersOf({ length: 2 }),
  volume: powersOf({ length: 3 }),
  time: powersOf({ time: 1 }),
  /** A point on a scale: points differ by a `temperature-difference`, and have no sum or product. */
  temperature: powersOf({ temperature: 1 }),
  'temperature-difference': powersOf({ temperature: 1 }),
  angle: powersOf({ angle: 1 }),
  money: powersOf({ money: 1 }),
  /**
   * How many pieces. Numbers of entities are quantities of dimension one (ISO/IEC Guide 99:2007,
   * 1.8, note 4), so 11 sheets times a length is a length, and a count and a ratio add up.
   */
  count: powersOf({}),
  ratio: powersOf({}),
} as const;

export type DimensionName = keyof typeof named | 'product';

/** Any powers without a name of their own are a `product`. */
export interface Dimension<out D extends DimensionName = DimensionName> {
  readonly name: D;
  readonly powers: Powers;
}

export const dimensionNames = Object.keys(named) as readonly Exclude<DimensionName, 'product'>[];

export const dimension = <D extends keyof typeof named>(name: D): Dimension<D> => ({
  name,
  powers: named[name],
});

const samePowers = (a: Powers, b: Powers): boolean => bases.every((base) => a[base] === b[base]);

/** A quantity of these powers is never a temperature point nor a count: it was calculated. */
export const dimensionOf = (some: Partial<Powers>): Dimension => {
  const powers = powersOf(some);
  const name = dimensionNames.find(
    (name) => name !== 'temperature' && name !== 'count' && samePowers(named[name], powers),
  );
  return { name: name ?? 'product', powers };
};

/** The dimension of a · bⁿ. */
export const dimensionOfProduct = (a: Dimension, b: Dimension, n = 1): Dimension =>
  dimensionOf(Object.fromEntries(bases.map((base) => [base, a.powers[base] + n * b.powers[base]])));

/** What a sum of both would be, or undefined where they do not add up. */
export const commonDimension = (a: Dimension, b: Dimension): Dimension | undefined => {
  if (!samePowers(a.powers, b.powers)) return undefined;
  if (a.name === b.name) return a;
  return a.name === 'count' ? b : b.name === 'count' ? a : undefined;
};

const phrases: Readonly<Record<Exclude<DimensionName, 'product'>, Text>> = {
  length: { en: 'a length', es: 'una longitud' },
  area: { en: 'an area', es: 'un área' },
  volume: { en: 'a volume', es: 'un volumen' },
  time: { en: 'a time', es: 'un tiempo' },
  temperature: { en: 'a temperature', es: 'una temperatura' },
  'temperature-difference': {
    en: 'a temperature difference',
    es: 'una diferencia de temperatura',
  },
  angle: { en: 'an angle', es: 'un ángulo' },
  money: { en: 'an amount of money', es: 'una cantidad de dinero' },
  count: { en: 'a count', es: 'un conteo' },
  ratio: { en: 'a plain number', es: 'un número sin unidad' },
};

const baseWords: Readonly<Record<Base, Text>> = {
  length: { en: 'length', es: 'longitud' },
  time: { en: 'time', es: 'tiempo' },
  temperature: { en: 'temperature', es: 'temperatura' },
  angle: { en: 'angle', es: 'ángulo' },
  money: { en: 'money', es: 'dinero' },
};

/** In words, for a message: `an area`, `a quantity of length^-1`. */
export const dimensionPhrase = ({ name, powers }: Dimension, language: Language = 'en'): string => {
  if (name !== 'product') return phrases[name][language];
  const factors = bases
    .filter((base) => powers[base] !== 0)
    .map((base) => `${baseWords[base][language]}^${powers[base]}`)
    .join(' · ');
  return { en: `a quantity of ${factors}`, es: `una cantidad de ${factors}` }[language];
};
