/** The keys of the trade's keypad, and what pressing one does to what stands in the field. */
import type { Style } from '#engine/takeoff/style.ts';

/** `says` stands on the key, `types` goes into the field. */
export type Key = { readonly says: string; readonly types: string };

export type Field = { readonly text: string; readonly at: number };

const typing = (...keys: readonly string[]): readonly Key[] =>
  keys.map((key) => ({ says: key, types: key }));

export const digits: readonly Key[] = typing('7', '8', '9', '4', '5', '6', '1', '2', '3', '0');

export const feet: Key = { says: 'ft', types: "'" };
export const inches: Key = { says: 'in', types: '"' };
export const point: Key = { says: '.', types: '.' };
export const slash: Key = { says: '/', types: '/' };
export const space: Key = { says: '␣', types: ' ' };
export const minus: Key = { says: '−', types: '-' };

/** What a tape shows between two inches, in halves, quarters and eighths, or in sixteenths. */
export const eighths = typing('1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8', '1/16');
export const sixteenths = typing('1/16', '3/16', '5/16', '7/16', '9/16', '11/16', '13/16', '15/16');

/** Feet, inches and fractions belong to a length on a tape; anything else is a plain number. */
export const isOnTape = (style: Style | undefined): boolean =>
  style === 'ft' || style === 'in' || style === 'feet-inches' || style === 'inches';

const isFraction = ({ types }: Key): boolean => /^\d+\/\d+$/.test(types);

/** A fraction stands apart from the whole inches before it. */
export function press({ text, at }: Field, key: Key): Field {
  const [before, after] = [text.slice(0, at), text.slice(at)];
  const apart = isFraction(key) && /\d$/.test(before) ? ' ' : '';
  const typed = apart + key.types;
  return { text: before + typed + after, at: at + typed.length };
}

/** Takes back what the last key put in: a fraction goes as a whole, with the space before it. */
export function eraseAt({ text, at }: Field): Field {
  const [before, after] = [text.slice(0, at), text.slice(at)];
  const fraction = / ?(?<!\d)(?:\d{1,2}\/(?:2|4|8|16))$/.exec(before);
  const kept = fraction ? before.slice(0, fraction.index) : before.slice(0, -1);
  return { text: kept + after, at: kept.length };
}
