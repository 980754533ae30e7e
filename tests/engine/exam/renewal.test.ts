import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addPeriod } from '#engine/calendar.ts';
import {
  renewalPhase,
  renewalStanding,
  renewalWindow,
  renewedUntil,
  validUntil,
} from '#engine/exam/renewal.ts';
import { renewalParts } from '#engine/exam/scheme.ts';
import { day, scheme, tried } from './small-scheme.ts';

const until = day('2029-08-31');

describe('truth', () => {
  test('the window opens half a year before the end, on the last day of a shorter month', () => {
    expect(renewalWindow(scheme, until)).toEqual({ opens: '2029-02-28', closes: '2029-11-30' });
  });

  test('where a scheme knows no late renewal, the window closes with the certificate', () => {
    const { closes: _, ...renewal } = scheme.renewal;
    const strict = { ...scheme, renewal: { ...renewal, closes: undefined } };
    expect(renewalWindow(strict, until).closes).toBe(until);
    expect(renewalPhase(strict, until, day('2029-09-01'))).toBe('lapsed');
  });

  test.each([
    ['2029-02-27', 'current'],
    ['2029-02-28', 'due'],
    ['2029-08-31', 'due'],
    ['2029-09-01', 'late'],
    ['2029-11-30', 'late'],
    ['2029-12-01', 'lapsed'],
  ])('on %s it is %s', (today, phase) => {
    expect(renewalPhase(scheme, until, day(today))).toBe(phase);
  });

  test('only the named parts are examined, with the shorter blueprint', () => {
    const [part, ...others] = renewalParts(scheme);
    expect(others).toEqual([]);
    expect(part).toMatchObject({ id: 'knowledge', kind: 'written' });
    expect(part?.kind === 'written' && part.blueprint.get('wall')).toBe(4);
  });

  test('what was passed before the window opened renews nothing', () => {
    const on = (date: string) =>
      renewalStanding(
        scheme,
        { tried: [tried('knowledge', date, 'passed')], held: new Map() },
        until,
        day('2029-04-01'),
      ).completeUntil;
    expect(on('2029-02-27')).toBeUndefined();
    expect(on('2029-02-28')).toBe('2030-02-28');
  });

  test('nor what was passed after it closed; what was passed in it counts though decided later', () => {
    const on = (date: string) =>
      renewalStanding(
        scheme,
        { tried: [tried('knowledge', date, 'passed')], held: new Map() },
        until,
        day('2029-12-20'),
      ).completeUntil;
    expect(on('2029-12-01')).toBeUndefined();
    expect(on('2029-11-30')).toBe('2030-11-30');
  });

  test('renewed early it goes on from its end, renewed late from the decision', () => {
    expect(renewedUntil(scheme, until, day('2029-03-05'))).toBe('2032-08-31');
    expect(renewedUntil(scheme, until, day('2029-10-05'))).toBe('2032-10-05');
    expect(validUntil(scheme, day('2028-02-29'))).toBe('2031-02-28');
  });
});

describe('laws', () => {
  test('phases follow one another day by day, and none comes back', () => {
    const order = ['current', 'due', 'late', 'lapsed'];
    fc.assert(
      fc.property(fc.nat(2000), fc.nat(1000), (first, days) => {
        const today = addPeriod(day('2025-01-01'), { count: first, unit: 'days' });
        const later = addPeriod(today, { count: days, unit: 'days' });
        const places = [today, later].map((each) =>
          order.indexOf(renewalPhase(scheme, until, each)),
        );
        expect(places[0]).toBeLessThanOrEqual(places[1]!);
      }),
    );
  });

  test('no renewal is shorter than one that goes on from the end', () => {
    fc.assert(
      fc.property(fc.nat(270), fc.nat(270), (a, b) => {
        const days = [a, b].toSorted((x, y) => x - y);
        const [early, late] = days.map((count) =>
          renewedUntil(scheme, until, addPeriod(day('2029-02-28'), { count, unit: 'days' })),
        );
        expect(early! <= late!).toBe(true);
        expect(early! >= addPeriod(until, scheme.validity)).toBe(true);
      }),
    );
  });
});
