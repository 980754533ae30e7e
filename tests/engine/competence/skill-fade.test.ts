import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addPeriod, isoDateFrom, type IsoDate } from '#engine/calendar.ts';
import { shareLeft, skillFade, skillMeasures } from '#engine/competence/skill-fade.ts';

const day = (text: string): IsoDate => {
  const read = isoDateFrom(text);
  if (!read.ok) throw new Error(text);
  return read.value;
};
const last = day('2030-01-01');
const after = (count: number): IsoDate => addPeriod(last, { count, unit: 'days' });

// Tatel & Ackerman, Psychological Bulletin, https://doi.org/10.1037/bul0000481: half is lost after about
// 6.5 months (accuracy), 11 (mixed), 13 (speed). Of 365.25 / 12 days a month these are 198, 335 and 396 days.
describe('truth', () => {
  test.each([
    ['accuracy', 198],
    ['mixed', 335],
    ['speed', 396],
  ] as const)('half of %s is left after %i days', (measure, days) => {
    expect(shareLeft(last, after(days), measure)).toBeCloseTo(0.5, 2);
  });

  test('accuracy is fresh for some 80 days, and less than half from 198 days on', () => {
    expect(skillFade(last, after(82)).advice).toBe('fresh');
    expect(skillFade(last, after(83)).advice).toBe('fading');
    expect(skillFade(last, after(197)).advice).toBe('fading');
    expect(skillFade(last, after(198)).advice).toBe('faded');
  });

  test('what was never practised has no share', () => {
    expect(skillFade(undefined, last)).toEqual({
      last: undefined,
      share: undefined,
      advice: 'never',
    });
  });
});

describe('laws', () => {
  test('it is whole on the day, never grows, and never runs out', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...skillMeasures),
        fc.nat(4000),
        fc.nat(400),
        (measure, days, more) => {
          const [now, then] = [after(days), after(days + more)].map((today) =>
            shareLeft(last, today, measure),
          );
          expect(shareLeft(last, last, measure)).toBe(1);
          expect(then).toBeLessThanOrEqual(now!);
          expect(then).toBeGreaterThan(0);
        },
      ),
    );
  });
});
