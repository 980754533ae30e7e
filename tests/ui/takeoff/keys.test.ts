import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rationalText } from '#engine/measure/rational.ts';
import { parseLength } from '#engine/measure/parse-quantity.ts';
import * as keys from '#ui/takeoff/keys.ts';
import { eraseAt, press, type Field, type Key } from '#ui/takeoff/keys.ts';

const empty: Field = { text: '', at: 0 };
const key = (says: string): Key => ({ says, types: says });
const typed = (...pressed: readonly Key[]): string => pressed.reduce(press, empty).text;

describe('truth', () => {
  test('feet, inches and a fraction come out as the trade writes them', () => {
    const text = typed(key('1'), key('2'), keys.feet, key('6'), key('1/2'), keys.inches);
    expect(text).toBe(`12'6 1/2"`);
    expect(parseLength(text).ok).toBe(true);
  });

  test('a fraction after feet needs no space', () => {
    expect(typed(key('3'), keys.feet, key('3/4'), keys.inches)).toBe(`3'3/4"`);
  });

  test('what is pressed goes where the caret stands', () => {
    expect(press({ text: '19', at: 1 }, key('2'))).toEqual({ text: '129', at: 2 });
    expect(press({ text: `8"`, at: 1 }, key('1/4'))).toEqual({ text: `8 1/4"`, at: 5 });
  });

  test('a fraction is erased as a whole, anything else by one sign', () => {
    expect(eraseAt({ text: '8 1/4', at: 5 })).toEqual({ text: '8', at: 1 });
    expect(eraseAt({ text: '13/16', at: 5 })).toEqual({ text: '', at: 0 });
    expect(eraseAt({ text: `12'`, at: 3 })).toEqual({ text: '12', at: 2 });
    expect(eraseAt({ text: '125', at: 2 })).toEqual({ text: '15', at: 1 });
    expect(eraseAt(empty)).toEqual(empty);
  });
});

describe('laws', () => {
  const all = [...keys.digits, ...keys.eighths, ...keys.sixteenths, keys.point, keys.slash];
  const anyKey = fc.constantFrom(...all, keys.feet, keys.inches, keys.space, keys.minus);

  test('every fraction of an inch on a tape has its key', () => {
    const written = [...keys.eighths, ...keys.sixteenths].map(({ types }) => {
      const read = parseLength(`${types}"`);
      return read.ok ? rationalText(read.value.value) : types;
    });
    expect(new Set(written).size).toBe(15);
  });

  test('the caret stays in the text', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(anyKey, fc.constant(null))), (pressed) => {
        const { text, at } = pressed.reduce<Field>(
          (field, each) => (each ? press(field, each) : eraseAt(field)),
          empty,
        );
        return at >= 0 && at <= text.length;
      }),
    );
  });
});
