import { approximate } from '#engine/measure/rational.ts';
import type { Drawn } from '#engine/takeoff/picture.ts';
import type { Text } from '#engine/text.ts';

/** The measures of a picture, to draw by and to write. */
export type Measured = {
  readonly has: (measure: string) => boolean;
  /** In base units, as near as a float is; throws a RangeError where there is none. */
  readonly size: (measure: string) => number;
  readonly text: (measure: string) => Text;
  /** Of a measure that holds or does not; undefined where there is none. */
  readonly holds: (measure: string) => boolean | undefined;
};

export const measured = ({ kind, measures, written }: Drawn): Measured => ({
  has: (measure) => measures.has(measure),
  size: (measure) => {
    const value = measures.get(measure);
    if (value === undefined || typeof value === 'boolean') {
      throw new RangeError(`The picture "${kind}" shows no ${measure}.`);
    }
    return approximate(value.value);
  },
  text: (measure) => written.get(measure) ?? { en: '', es: '' },
  holds: (measure) => {
    const value = measures.get(measure);
    return typeof value === 'boolean' ? value : undefined;
  },
});

/** A measure with its name before it: `lap 6"`. */
export const named = (name: Text, { en, es }: Text): Text => ({
  en: `${name.en} ${en}`,
  es: `${name.es} ${es}`,
});

/** So many of something: `4 seams`. */
export const counted = ({ en, es }: Text, names: Text): Text => ({
  en: `${en} ${names.en}`,
  es: `${es} ${names.es}`,
});

/** A size on paper, in proportion but never so small or so large that nothing could be seen. */
export const within = (size: number, least: number, most: number): number =>
  Math.min(most, Math.max(least, size));

/** How wide every drawing is. */
export const width = 340;
