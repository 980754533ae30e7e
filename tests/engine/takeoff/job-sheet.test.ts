import { describe, expect, it } from 'vitest';
import type { GivenId } from '#engine/takeoff/family.ts';
import { jobEntries } from '#engine/takeoff/job-entry.ts';
import { jobSheet } from '#engine/takeoff/job-sheet.ts';
import { takeoff } from './shipped.ts';

const wholeWall = takeoff('whole-wall');

const house = {
  run: `128'-6"`,
  inside: '1',
  outside: '2',
  ends: '2',
  'turn-up': '8 1/2 in',
  shelf: '4 in',
  edge: 'no',
  backing: 'steel studs',
  'stud-spacing': '16',
  'weep-kind': 'sí',
};

const sheetOf = (entries: Readonly<Record<string, string>>, family = wholeWall) =>
  jobSheet(family, new Map(Object.entries(entries).map(([id, text]) => [id as GivenId, text])));

const faultsOf = (entries: Readonly<Record<string, string>>) => {
  const sheet = sheetOf(entries);
  return sheet.ok ? [] : sheet.error.map(({ code, given }) => [code, given]);
};

describe('the list of materials', () => {
  it('is that of the formulas, worked out by hand here', () => {
    const sheet = sheetOf(house);
    if (!sheet.ok) throw new Error(sheet.error[0]?.message.en);
    const amounts = sheet.value.lines.map(({ part, amount }) => [part, amount.en]);
    expect(amounts).toEqual([
      // 8 1/2 + 4 - 1/2
      ['girth', '12"'],
      // 128'-6" - 2 x 3 x (6 - 2) in + (3 - 1) x 2 in + 2 x 1 in
      ['membrane', `127'-0"`],
      // 127 x 1.1 / 50 = 2.794, one strip of 12 in from a roll 18 in wide
      ['rolls', '3 rolls'],
      // (128.5 + (2 + 6) x 1 ft) x 1.1 / 50 = 3.003
      ['tape', '4 rolls'],
      ['corner-pieces', '3 corners'],
      // 2 x 128.5 x 1 x 1.1 / 250 = 1.131
      ['primer', '2 cans'],
      // 128.5 x 1.05 / 10 = 13.49
      ['bars', '14 pieces'],
      // 13 pieces of 16
      ['fasteners', '208 fasteners'],
      // 1542 in x 1.05 / 112 = 14.46
      ['strap', '15 pieces'],
      // 1542 in / 16 in² x 1.1 / 18.2273 = 5.816
      ['sealant', '6 cartridges'],
      // 1542 in / 8 in² x 1.1 / 18.2273 = 11.63
      ['mastic', '12 cartridges'],
      ['drip-edge', '0 pieces'],
      // 1542 / 24 + 1 = 65.25
      ['weeps', '66 weeps'],
    ]);
    expect(sheet.value.lines.every(({ working }) => working.length > 1)).toBe(true);
  });

  it('takes no strap on block, and drip edge where there is one', () => {
    const sheet = sheetOf({ ...house, backing: 'no', edge: 'yes' });
    if (!sheet.ok) throw new Error(sheet.error[0]?.message.en);
    const amounts = new Map<string, string>(
      sheet.value.lines.map(({ part, amount }) => [part, amount.es]),
    );
    expect(amounts.get('strap')).toBe('0 piezas');
    // (1542 - 2) / 118 = 13.05
    expect(amounts.get('drip-edge')).toBe('14 piezas');
  });

  it('follows a changed data sheet', () => {
    const wide = sheetOf(house, takeoff('whole-wall', { 'fastener-spacing': '6 in' }));
    if (!wide.ok) throw new Error(wide.error[0]?.message.en);
    // 118 / 6 + 1, so 21 in each of 13 pieces
    expect(wide.value.lines.find(({ part }) => part === ('fasteners' as never))?.amount.en).toBe(
      '273 fasteners',
    );
  });
});

describe('what is entered', () => {
  it('is asked for in the order of the family, with its unit or its words', () => {
    const entries = jobEntries(wholeWall.family);
    expect(entries.map(({ id }) => id)).toEqual(Object.keys(house));
    expect(entries.find(({ id }) => id === ('stud-spacing' as GivenId))?.asks).toMatchObject({
      kind: 'amount',
      style: 'inches',
    });
  });

  it('every fault is told at once', () => {
    expect(
      faultsOf({
        ...house,
        run: '',
        inside: '1.5',
        outside: 'two',
        'turn-up': '8 gal',
        edge: 'maybe',
      }),
    ).toEqual([
      ['MISSING', 'run'],
      ['NOT_WHOLE', 'inside'],
      ['UNREADABLE', 'outside'],
      ['WRONG_UNIT', 'turn-up'],
      ['UNREADABLE', 'edge'],
    ]);
  });

  it.each(['-5 ft', '0 ft', '400 mi', '9999999 ft'])('a run of %s is refused', (run) => {
    expect(faultsOf({ ...house, run })).toHaveLength(1);
  });

  it('what does not go together is told in words', () => {
    expect(faultsOf({ ...house, 'turn-up': '7 in' })).toEqual([['NEED', undefined]]);
    const low = sheetOf({ ...house, 'turn-up': '7 in' });
    expect(low.ok ? '' : low.error[0]?.message.en).toContain('8" or more');
    expect(faultsOf({ ...house, shelf: '40 in' })).toEqual([['NEED', undefined]]);
    expect(faultsOf({ ...house, run: '2 ft' })).toEqual([['NEED', undefined]]);
    expect(low.ok ? [] : low.error[0]?.among).toEqual(['turn-up']);
  });
});
