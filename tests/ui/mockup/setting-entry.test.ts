import { describe, expect, test } from 'vitest';
import { quantity } from '#engine/measure/conversion.ts';
import { rational } from '#engine/measure/rational.ts';
import { SettingEntry, settingsIn } from '#ui/mockup/setting-entry.svelte.ts';
import { tinySequence } from '../tiny-content.ts';

const [, hang] = tinySequence().steps;
const ask = hang!.asks[0]!;
const fresh = () => new SettingEntry(ask, quantity(6, 'in'));

describe('truth', () => {
  test('a setting counts only once it was touched, or kept on purpose', () => {
    const entry = fresh();
    expect(entry.isRight).toBe(false);
    entry.keep();
    expect(entry.isRight).toBe(true);
    expect(settingsIn([entry])).toEqual({ 'turn-up': '6 in' });
  });

  test.each([
    [1, rational(13, 2)],
    [-1, rational(11, 2)],
  ] as const)('a press of %d moves it by a step of the data sheet', (direction, to) => {
    const entry = fresh();
    entry.nudge(direction);
    expect(entry.value).toEqual(quantity(to, 'in'));
    expect(entry.isRight).toBe(true);
  });

  test.each([
    ['8 1/2 in', 'en', rational(17, 2)],
    ['8.5"', 'en', rational(17, 2)],
    ['8 1/2', 'en', rational(17, 2)],
    ['8 1/2 pulg', 'es', rational(17, 2)],
    ['9', 'es', rational(9)],
  ] as const)('%s is read in %s as it was meant', (typed, language, inches) => {
    const entry = fresh();
    entry.write(typed, language);
    expect(entry.fault).toBeUndefined();
    expect(entry.value).toEqual(quantity(inches, 'in'));
    expect(entry.isRight).toBe(true);
  });

  test.each(['', 'high', '8 gal', '70 °F'])(
    '“%s” is no height, and the last one stays',
    (typed) => {
      const entry = fresh();
      entry.write(typed, 'en');
      expect(entry.fault).toHaveProperty('es');
      expect(entry.isRight).toBe(false);
      expect(entry.value).toEqual(quantity(6, 'in'));
    },
  );

  test.each(['3 in', '15 in', '3 ft'])('%s cannot be set here', (typed) => {
    const entry = fresh();
    entry.write(typed, 'en');
    expect(entry.fault).toBe('not-offered');
    expect(entry.isRight).toBe(false);
  });

  test('after a slip of the pen the buttons work on from the last value', () => {
    const entry = fresh();
    entry.write('eight', 'en');
    entry.nudge(1);
    expect(entry.fault).toBeUndefined();
    expect(entry.typed).toBeUndefined();
    expect(entry.value).toEqual(quantity(rational(13, 2), 'in'));
  });
});
