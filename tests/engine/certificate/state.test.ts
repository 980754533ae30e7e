import { describe, expect, test } from 'vitest';
import type { IsoDate } from '#engine/calendar.ts';
import { changed, changes, changesFrom, reasonLengths } from '#engine/certificate/change.ts';
import { shownName } from '#engine/certificate/name-shown.ts';
import { certificateState, holdsNow, reminderOn, standings } from '#engine/certificate/state.ts';

const day = (text: string) => text as IsoDate;

describe('what a certificate is on a day', () => {
  const certificate = {
    standing: 'in-force',
    until: day('2033-05-01'),
    renewalOpens: { count: 6, unit: 'months' },
    isRenewed: false,
  } as const;

  test.each([
    ['2032-10-31', 'current'],
    ['2032-11-01', 'due'],
    ['2033-05-01', 'due'],
    ['2033-05-02', 'expired'],
  ])('on %s it is %s', (today, state) => {
    expect(certificateState(certificate, day(today))).toBe(state);
  });

  test.each([
    ['2032-11-01', 'current'],
    ['2033-05-01', 'current'],
    ['2033-05-02', 'expired'],
  ])('on %s, renewed, it is %s', (today, state) => {
    expect(certificateState({ ...certificate, isRenewed: true }, day(today))).toBe(state);
  });

  test.each([
    ['2031-01-01', 'suspended'],
    ['2033-05-01', 'suspended'],
    ['2033-05-02', 'expired'],
  ])('on %s, suspended, it is %s', (today, state) => {
    expect(certificateState({ ...certificate, standing: 'suspended' }, day(today))).toBe(state);
  });

  test.each(['2031-01-01', '2033-05-02'])('on %s, withdrawn, it is withdrawn', (today) => {
    expect(certificateState({ ...certificate, standing: 'withdrawn' }, day(today))).toBe(
      'withdrawn',
    );
  });

  test('it is due from the end of a shorter month where the day is not there', () => {
    const ends = { ...certificate, until: day('2031-08-31') };
    expect(certificateState(ends, day('2031-02-27'))).toBe('current');
    expect(certificateState(ends, day('2031-02-28'))).toBe('due');
  });

  test('only what is current or due holds', () => {
    const held = (['current', 'due', 'expired', 'suspended', 'withdrawn'] as const).filter(
      holdsNow,
    );
    expect(held).toEqual(['current', 'due']);
  });
});

test.each([
  ['2033-03-01', undefined],
  ['2033-03-02', 60],
  ['2033-03-31', 60],
  ['2033-04-01', 30],
  ['2033-04-30', 30],
  ['2033-05-01', 0],
  ['2033-05-02', 'ended'],
])('on %s the reminder of 1 May is %s', (today, reminder) => {
  expect(reminderOn(day('2033-05-01'), day(today))).toBe(reminder);
});

describe('what may be done with it', () => {
  const why = 'Missed the yearly check.';

  test.each([
    ['in-force', ['suspend', 'withdraw', 'reissue']],
    ['suspended', ['lift', 'withdraw', 'reissue']],
    ['withdrawn', []],
  ] as const)('while %s: %j', (standing, possible) => {
    expect(changesFrom(standing)).toEqual(possible);
    for (const change of changes) {
      expect(changed(standing, change, why).ok).toBe(possible.some((one) => one === change));
    }
  });

  test.each([
    ['in-force', 'suspend', 'suspended'],
    ['suspended', 'lift', 'in-force'],
    ['suspended', 'withdraw', 'withdrawn'],
    ['suspended', 'reissue', 'suspended'],
  ] as const)('%s, %s: %s', (standing, change, after) => {
    expect(changed(standing, change, why)).toEqual({ ok: true, value: after });
  });

  test('each asks for a reason, of a length that can be read', () => {
    for (const standing of standings) {
      for (const change of changesFrom(standing)) {
        const { least, most } = reasonLengths;
        const refused = (reason: string, error: string) =>
          expect(changed(standing, change, reason)).toEqual({ ok: false, error });
        refused('', 'NO_REASON');
        refused(`  ${'x'.repeat(least - 1)}  `, 'NO_REASON');
        refused('x'.repeat(most + 1), 'LONG_REASON');
        expect(changed(standing, change, 'x'.repeat(least)).ok).toBe(true);
        expect(changed(standing, change, 'x'.repeat(most)).ok).toBe(true);
      }
    }
  });
});

test.each([
  ['Ana María Ruiz', 'full', 'Ana María Ruiz'],
  ['  Ana  Ruiz ', 'full', 'Ana Ruiz'],
  ['Ana María Ruiz', 'initials', 'A. M. R.'],
  ['Óscar', 'initials', 'Ó.'],
  ['Ana', 'none', undefined],
  ['', 'full', undefined],
  ['', 'initials', undefined],
] as const)('of "%s" is shown by %s: %s', (name, shown, seen) => {
  expect(shownName(name, shown)).toBe(seen);
});
