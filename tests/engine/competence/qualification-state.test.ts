import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addPeriod, isoDateFrom, type IsoDate } from '#engine/calendar.ts';
import {
  dueThrough,
  governing,
  type HeldCertificate,
  isHolding,
  stateOn,
} from '#engine/competence/qualification-state.ts';
import { certificateState } from '#engine/certificate/state.ts';
import { renewalPhase } from '#engine/exam/renewal.ts';

const day = (text: string): IsoDate => {
  const read = isoDateFrom(text);
  if (!read.ok) throw new Error(text);
  return read.value;
};
const scheme = {
  renewal: {
    opens: { count: 6, unit: 'months' },
    closes: { count: 3, unit: 'months' },
    parts: [],
  },
} as const;
const one = (given: Partial<HeldCertificate> = {}): HeldCertificate => ({
  id: 'a',
  state: 'in-force',
  grantedOn: day('2026-08-31'),
  validUntil: day('2029-08-31'),
  isReplaced: false,
  ...given,
});

describe('truth', () => {
  test.each([
    ['2029-02-27', 'current'],
    ['2029-02-28', 'due'],
    ['2029-08-31', 'due'],
    ['2029-09-01', 'lapsed'],
  ])('a certificate to 31 August 2029 is on %s %s', (today, state) => {
    expect(stateOn(day(today), scheme, [one()], true)).toBe(state);
  });

  test('a renewal that is due still holds on its last day, and no longer on the next', () => {
    expect(isHolding(stateOn(day('2029-08-31'), scheme, [one()], false))).toBe(true);
    expect(isHolding(stateOn(day('2029-09-01'), scheme, [one()], false))).toBe(false);
  });

  test.each([
    ['suspended', '2028-01-01', 'suspended'],
    ['suspended', '2029-09-01', 'lapsed'],
    ['withdrawn', '2028-01-01', 'withdrawn'],
    ['withdrawn', '2029-09-01', 'withdrawn'],
  ] as const)('%s, it is on %s %s', (state, today, expected) => {
    expect(stateOn(day(today), scheme, [one({ state })], false)).toBe(expected);
  });

  test('without a certificate it says whether somebody is in training', () => {
    expect(stateOn(day('2028-01-01'), scheme, [], true)).toBe('in-training');
    expect(stateOn(day('2028-01-01'), scheme, [], false)).toBe('none');
  });

  test('a certificate of a scheme that is no longer there is current to its last day', () => {
    expect(stateOn(day('2029-08-31'), undefined, [one()], false)).toBe('current');
    expect(stateOn(day('2029-09-01'), undefined, [one()], false)).toBe('lapsed');
  });

  test('of several the one granted last speaks, and one that was replaced never does', () => {
    const later = one({ id: 'b', grantedOn: day('2029-05-01'), validUntil: day('2032-08-31') });
    const withdrawn = one({ id: 'c', grantedOn: day('2030-01-01'), state: 'withdrawn' });
    expect(governing([later, one()])).toBe(later);
    expect(stateOn(day('2030-01-02'), scheme, [withdrawn, later], false)).toBe('withdrawn');
    expect(stateOn(day('2028-01-01'), scheme, [{ ...withdrawn, isReplaced: true }], false)).toBe(
      'none',
    );
  });
});

describe('laws', () => {
  const days = fc
    .integer({ min: 0, max: 2000 })
    .map((count) => addPeriod(day('2026-01-01'), { count, unit: 'days' }));
  test('in force, it holds exactly until its last day, and is due when renewal is', () => {
    fc.assert(
      fc.property(days, days, (until, today) => {
        const state = stateOn(today, scheme, [one({ validUntil: until })], false);
        expect(isHolding(state)).toBe(today <= until);
        expect(state === 'due').toBe(renewalPhase(scheme, until, today) === 'due');
      }),
    );
  });

  test('the board says of a certificate what its own verification page says', () => {
    const states = fc.constantFrom('in-force' as const, 'suspended' as const, 'withdrawn' as const);
    fc.assert(
      fc.property(states, days, days, (state, until, today) => {
        const shown = stateOn(today, scheme, [one({ state, validUntil: until })], true);
        const certificate = { until, renewalOpens: scheme.renewal.opens, isRenewed: false };
        const verified = certificateState({ ...certificate, standing: state }, today);
        expect(shown).toBe(verified === 'expired' ? 'lapsed' : verified);
      }),
    );
  });

  test('what is due today is what ends by one day', () => {
    expect(dueThrough(scheme, day('2029-02-28'))).toBe('2029-08-31');
    fc.assert(
      fc.property(days, days, (until, today) => {
        const state = stateOn(today, scheme, [one({ validUntil: until })], false);
        expect(state === 'due').toBe(today <= until && until <= dueThrough(scheme, today));
      }),
    );
  });

  test('the order of certificates makes no difference', () => {
    const held = fc.uniqueArray(
      fc.record({
        id: fc.constantFrom('a', 'b', 'c', 'd'),
        state: fc.constantFrom('in-force' as const, 'suspended' as const, 'withdrawn' as const),
        grantedOn: days,
        validUntil: days,
        isReplaced: fc.boolean(),
      }),
      { selector: ({ id }) => id, maxLength: 4 },
    );
    fc.assert(
      fc.property(held, days, (all, today) => {
        expect(stateOn(today, scheme, all.toReversed(), false)).toBe(
          stateOn(today, scheme, all, false),
        );
      }),
    );
  });
});
