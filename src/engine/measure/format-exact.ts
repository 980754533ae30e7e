import { bases } from './dimension.ts';
import type { Base, Dimension } from './dimension.ts';
import type { Quantity } from './quantity.ts';
import { rationalText } from './rational.ts';

const symbols: Readonly<Record<Base, string>> = {
  length: 'm',
  time: 's',
  temperature: 'C°',
  angle: '°',
  money: '$',
};

const baseUnit = ({ name, powers }: Dimension): string => {
  if (name === 'temperature') return 'K';
  if (name === 'count') return 'each';
  return bases
    .filter((base) => powers[base] !== 0)
    .map((base) => `${symbols[base]}${powers[base] === 1 ? '' : `^${powers[base]}`}`)
    .join('·');
};

/**
 * The one text for this quantity that loses nothing: a whole number or a fraction, and base units, as
 * in `381/100 m` or `5000/127 m^-1`. Reading it gives the same quantity back, up to the ninth power of
 * a base and as long as the text may be.
 */
export const formatExact = (q: Quantity): string =>
  `${rationalText(q.value)} ${baseUnit(q.dimension)}`.trimEnd();
