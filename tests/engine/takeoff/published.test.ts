/** What others have published, computed by the shipped families; and their errors, caught as slips. */
import { describe, expect, it } from 'vitest';
import { answers, job, part, verdictOn } from './shipped.ts';
import { exactly, same, value } from './worked-out.ts';

const bead = (size: string) => {
  const [width = '', depth = ''] = size.split(' x ');
  return { width: `${width} in`, depth: `${depth} in` };
};

// 1 US gal = 231 in³ and 128 fl oz: NIST Handbook 44, Appendix C
// (https://yumpu.com/en/document/view/67962081/vdoc/461); the table is 231/128 x fl oz / (12 x area),
// worked out by hand with decimals.
const yields = [
  ['1/8 x 1/8', 97.21, 192.5, 279.12],
  ['3/16 x 3/16', 43.21, 85.56, 124.06],
  ['1/4 x 1/8', 48.61, 96.25, 139.56],
  ['1/4 x 1/4', 24.3, 48.12, 69.78],
  ['3/8 x 1/4', 16.2, 32.08, 46.52],
  ['3/8 x 3/8', 10.8, 21.39, 31.01],
  ['1/2 x 1/4', 12.15, 24.06, 34.89],
  ['1/2 x 3/8', 8.1, 16.04, 23.26],
  ['3/4 x 3/8', 5.4, 10.69, 15.51],
] as const;

describe('how far a cartridge goes', () => {
  const yieldOf = (size: string, ounces: string) =>
    answers(job('bead-yield', { package: ounces, ...bead(size), run: '100 ft' }), 'yield', 'ft')
      .exact;

  it.each(yields)(
    '%s in: %d ft from 10.1 oz, %d from 20, %d from 29',
    (size, small, middle, large) => {
      expect(yieldOf(size, '10.1 fl oz')).toBeCloseTo(small, 1);
      expect(yieldOf(size, '20 fl oz')).toBeCloseTo(middle, 1);
      expect(yieldOf(size, '29 fl oz')).toBeCloseTo(large, 1);
      expect(Math.abs(yieldOf(size, '10.1 fl oz') - small)).toBeLessThanOrEqual(0.0051);
      expect(Math.abs(yieldOf(size, '20 fl oz') - middle)).toBeLessThanOrEqual(0.0051);
      expect(Math.abs(yieldOf(size, '29 fl oz') - large)).toBeLessThanOrEqual(0.0051);
    },
  );

  it.each([
    ['1/8 x 1/8', 1232],
    ['1/4 x 1/4', 308],
    ['1/2 x 1/4', 154],
    ['3/4 x 3/8', 68.4],
  ] as const)('a gallon makes %s in: %d ft', (size, feet) => {
    expect(Math.abs(yieldOf(size, '1 gal') - feet)).toBeLessThan(0.06);
  });

  // Public figures for a 10.3 oz cartridge, rounded by their publishers.
  it.each([
    ['1/4 x 1/4', 24.78, 25],
    ['3/8 x 3/8', 11.02, 11],
    ['1/2 x 1/2', 6.2, 6.2],
    ['3/4 x 3/8', 5.51, 5.5],
  ] as const)('10.3 oz of %s in make %d ft, published as about %d', (size, feet, published) => {
    expect(Math.abs(yieldOf(size, '10.3 fl oz') - feet)).toBeLessThan(0.0051);
    expect(Math.abs(yieldOf(size, '10.3 fl oz') - published)).toBeLessThan(0.25);
  });

  // Both are published of a 10.1 oz cartridge, and both are twice as far as the volume goes.
  it.each([
    ['1/4 x 1/4', '24.3 ft', '48.6 ft', ['50 ft', '55 ft']],
    ['1/2 x 1/4', '12.15 ft', '24.3 ft', ['25 ft', '28 ft']],
  ] as const)('at %s it is %s: %s is the slip of twice the yield, and %s no better', (...row) => {
    const [size, right, twice, published] = row;
    const given = { package: '10.1 fl oz', ...bead(size), run: '100 ft' };
    const cartridge = job('bead-yield', given);
    expect(verdictOn(cartridge, 'yield', right).kind).toBe('right');
    const wrong = verdictOn(cartridge, 'yield', twice);
    expect([wrong.kind, wrong.slips.map(({ id }) => id)]).toEqual(['slip', ['twice-as-far']]);
    for (const text of published) {
      expect([text, verdictOn(cartridge, 'yield', text).kind]).toEqual([text, 'wrong']);
    }
  });

  it('leaving out the 128 fl oz of a gallon, a published error, is a slip', () => {
    const half = job('bead-yield', { package: '10.1 fl oz', ...bead('1/2 x 1/4'), run: '100 ft' });
    const wrong = verdictOn(half, 'yield', `${12.151 * 128} ft`);
    expect(wrong.slips.map(({ id }) => id)).toEqual(['ounces-as-gallons']);
  });

  // 100 ft of 1/2 x 1/4 take 150 in³: by ounces and waste, the exact number and what is bought.
  it.each([
    ['10.1 fl oz', '0 %', 8.229, 9],
    ['10.1 fl oz', '5 %', 8.641, 9],
    ['10.1 fl oz', '10 %', 9.052, 10],
    ['10.3 fl oz', '0 %', 8.07, 9],
    ['10.3 fl oz', '5 %', 8.473, 9],
    ['10.3 fl oz', '10 %', 8.877, 9],
    ['20 fl oz', '0 %', 4.156, 5],
    ['20 fl oz', '5 %', 4.364, 5],
    ['20 fl oz', '10 %', 4.571, 5],
    ['29 fl oz', '0 %', 2.866, 3],
    ['29 fl oz', '5 %', 3.009, 4],
    ['29 fl oz', '10 %', 3.153, 4],
  ] as const)(
    '100 ft of 1/2 x 1/4 from %s with %s waste: %d, so %d',
    (size, waste, exact, bought) => {
      const given = { package: size, ...bead('1/2 x 1/4'), run: '100 ft' };
      const found = answers(job('bead-yield', given, { 'sealant-waste': waste }), 'packages', '1');
      expect(found.exact).toBeCloseTo(exact, 3);
      expect(found.right).toBe(bought);
    },
  );

  // 231/128 x fl oz / (12 x pi d²/4), from the same identities, worked out by hand with decimals.
  it.each([
    ['1/8 in', 10.1, 123.77],
    ['3/16 in', 10.1, 55.01],
    ['1/4 in', 10.1, 30.94],
    ['3/8 in', 10.1, 13.75],
    ['1/2 in', 10.1, 7.74],
    ['1/4 in', 20, 61.27],
    ['1/4 in', 29, 88.85],
  ] as const)('a round bead %s across, from %d oz: %d ft', (diameter, ounces, feet) => {
    const bead = job('mastic-round-bead', { run: '100 ft', diameter });
    const volume = answers(bead, 'volume', 'in3').exact;
    expect(Math.abs((((ounces * 231) / 128) * 100) / volume - feet)).toBeLessThanOrEqual(0.0051);
  });

  it.each([
    ['1/4 in', 48.61],
    ['3/8 in', 21.6],
    ['1/2 in', 12.15],
  ] as const)('a fillet with legs of %s goes %d ft a 10.1 oz cartridge', (leg, feet) => {
    const area = answers(job('sealant-in-angle', { run: '100 ft', leg }), 'area', 'in2').exact;
    expect(18.2273 / area / 12).toBeCloseTo(feet, 2);
  });
});

// n sheets of length s with lap l cover n s - (n - 1) l: worked out by hand with fractions.
describe('sheets and laps', () => {
  it.each([
    ['100 ft', '10 ft', '6 in', 11, 10, '105 ft'],
    ['100 ft', '10 ft', '4 in', 11, 10, '106 ft 8 in'],
    ['60 ft', '10 ft', '6 in', 7, 6, '67 ft'],
    ['50 ft', '50 ft', '6 in', 1, 0, '50 ft'],
    ['51 ft', '50 ft', '6 in', 2, 1, '99 ft 6 in'],
    ['200 ft', '75 ft', '6 in', 3, 2, '224 ft'],
    ['12 ft', '8 ft', '6 in', 2, 1, '15 ft 6 in'],
    // Exactly as far as so many sheets reach: not one more.
    ['105 ft', '10 ft', '6 in', 11, 10, '105 ft'],
    ['67 ft', '10 ft', '6 in', 7, 6, '67 ft'],
  ])(
    '%s in sheets of %s with %s laps take %d with %d laps, which cover %s',
    (run, sheet, lap, sheets, laps, covered) => {
      const found = job('sheets-straight-run', { run, sheet }, { 'seam-lap': lap });
      expect(answers(found, 'sheets', '1').right).toBe(sheets);
      expect(answers(found, 'laps', '1').right).toBe(laps);
      const reach = value('n * s - (n - 1) * l', { n: String(sheets), s: sheet, l: lap });
      expect(exactly(reach)).toBe(same(covered));
    },
  );

  it('60 ft in six sheets of 10 ft is the slip that forgets the laps', () => {
    const wall = job(
      'sheets-straight-run',
      { run: '60 ft', sheet: '10 ft' },
      { 'seam-lap': '6 in' },
    );
    expect(verdictOn(wall, 'sheets', '6 sheets').slips.map(({ id }) => id)).toEqual([
      'lap-forgotten',
    ]);
  });

  it.each([
    ['120 in', '16 in', 7, 8],
    ['48 in', '18 in', 2, 12],
  ] as const)(
    'a roll %s wide gives strips of %s: %d, and %d in are left',
    (width, girth, strips, left) => {
      const roll = job(
        'strips-from-roll',
        { girth, length: '200 ft' },
        { 'roll-width-wide': width },
      );
      expect(answers(roll, 'strips', '1').right).toBe(strips);
      expect(answers(roll, 'offcut', 'in').right).toBe(left);
    },
  );

  it('1000 ft² at 250 ft²/gal are 4 gal exactly, and 4 cans', () => {
    const given = { run: '500 ft', girth: '12 in' };
    const primer = job('primer-two-faces', given, { 'sealant-waste': '0 %' });
    expect(answers(primer, 'area', 'ft2').right).toBe(1000);
    expect(answers(primer, 'cans', '1')).toEqual({ exact: 4, right: 4 });
  });

  it('250 ft² at 300 ft²/gal are 0.833 gal, so 1 can', () => {
    const numbers = { 'sealant-waste': '0 %', 'primer-coverage': '300 ft2/gal' };
    const primer = job('primer-two-faces', { run: '125 ft', girth: '12 in' }, numbers);
    expect(answers(primer, 'cans', '1').exact).toBeCloseTo(0.8333, 4);
    expect(answers(primer, 'cans', '1').right).toBe(1);
  });
});

describe('fasteners and fence posts', () => {
  // n = ceil((L - 2e) / s) + 1, evenly spaced (L - 2e) / (n - 1): worked out by hand.
  it.each([
    ['120 in', '8 in', '0 in', 16, 8],
    ['120 in', '8 in', '1 in', 16, 7.8667],
    ['120 in', '8 in', '2 in', 16, 7.7333],
    ['96 in', '8 in', '0 in', 13, 8],
    ['100 in', '8 in', '2 in', 13, 8],
    ['120 in', '12 in', '1 in', 11, 11.8],
    ['120 in', '6 in', '1 in', 21, 5.9],
  ])(
    'a bar of %s, %s apart, %s from its ends, takes %d at %d in',
    (bar, spacing, end, many, apart) => {
      const numbers = { 'fastener-spacing': spacing, 'bar-end-distance': end };
      const found = job('fasteners-one-bar', { bar }, numbers);
      expect(answers(found, 'fasteners', '1').right).toBe(many);
      expect(answers(found, 'spacing', 'in').exact).toBeCloseTo(apart, 4);
    },
  );

  it('24 ft at 8 ft takes 4 posts; 75 ft at 8 ft has 10 bays', () => {
    const posts = (bar: string) =>
      answers(
        job(
          'fasteners-one-bar',
          { bar },
          { 'fastener-spacing': '8 ft', 'bar-end-distance': '0 in' },
        ),
        'fasteners',
        '1',
      ).right;
    expect(posts('24 ft')).toBe(4);
    expect(posts('75 ft')).toBe(11);
  });

  it('13 for 100 / 8 + 1, a published error, is a slip: it is 14', () => {
    const numbers = { 'fastener-spacing': '8 ft', 'bar-end-distance': '0 in' };
    const fence = job('fasteners-one-bar', { bar: '100 ft' }, numbers);
    expect(verdictOn(fence, 'fasteners', '14').kind).toBe('right');
    const wrong = verdictOn(fence, 'fasteners', '13');
    expect([wrong.kind, wrong.slips.map(({ id }) => id)]).toEqual(['slip', ['one-too-few']]);
    expect(wrong.say.en).toContain('Or else:');
  });

  // ceil(L / s) + 1: worked out by hand. Spacings: BIA Technical Note 28B (24 in open, 16 in wicks); the
  // code's 33 in as quoted at https://www.jlconline.com/how-to/exteriors/weep-holes-in-brick-and-stone-veneer_o
  it.each([
    ['20 ft', 16, 11, 9],
    ['33 ft', 26, 18, 13],
    ['100 ft', 76, 51, 38],
  ])('weeps in %s: %d at 16 in, %d at 24 in, %d at 33 in', (run, wicks, open, code) => {
    const weeps = (kind: string, numbers = {}) =>
      answers(job('weeps-in-wall', { run, kind }, numbers), 'weeps', '1').right;
    expect(weeps('wicks')).toBe(wicks);
    expect(weeps('open head joints')).toBe(open);
    expect(weeps('yes', { 'weep-spacing-open': '33 in' })).toBe(code);
  });

  // A closed loop takes ceil(L / s), with no one added: worked out by hand.
  it.each([
    ['60 ft', '40 ft', 100],
    ['61 ft', '40 ft', 101],
    // 202'-4" is 101 spaces and 4 in: one more.
    ['61 ft 2 in', '40 ft', 102],
    // 199'-8" is 99 spaces and 20 in.
    ['59 ft 10 in', '40 ft', 100],
  ])('round %s x %s there are as many weeps as spaces, %d', (length, width, weeps) => {
    const ring = job('weeps-round-building', { length, width });
    expect(answers(ring, 'weeps', '1').right).toBe(weeps);
    expect(verdictOn(ring, 'weeps', String(weeps)).kind).toBe('right');
    const more = verdictOn(ring, 'weeps', String(weeps + 1));
    expect(more.slips.map(({ id }) => id)).toEqual(['one-too-many']);
    expect(verdictOn(ring, 'weeps', String(weeps - 1)).kind).not.toBe('right');
  });
});

// Worked examples, each with where it stands.
describe('feet, inches and fractions', () => {
  const openStax = 'OpenStax, github openstax/osbooks-prealgebra-bundle';
  it.each([
    ['"8 ft 7 in" + "12 ft 11 in"', '21 ft 6 in', `${openStax} m82461`],
    ['4 * "6 ft 4 in"', '25 ft 4 in', `${openStax} m81330`],
    ['"6 ft 6 in" + "3 ft 8 in"', '10 ft 2 in', `${openStax} m82461`],
    ['"6 ft 4 in" + "2 ft 10 in"', '9 ft 2 in', `${openStax} m81330`],
    ['"6 ft 4 in"', '76 in', openStax],
    ['"66 in"', '5.5 ft', openStax],
    ['"45 in"', '3.75 ft', openStax],
    [
      '"14 ft 4 in" - "8 ft 8 in"',
      '5 ft 8 in',
      'gradesaver.com, Elementary Technical Mathematics, 1B review',
    ],
    ['"6 ft 8 in" - "3 ft 10 in"', '2 ft 10 in', 'aaamath.com/B/mea-sub-ftin.htm'],
    ['"5 ft 2 in" - "1 ft 8 in"', '3 ft 6 in', 'treneri.me/adding-and-subtracting-feet-and-inches'],
    ['"7 ft 10 in" + "8 ft 5 in"', '16 ft 3 in', 'constructionqueries.wordpress.com/2014/12/18'],
    [
      '"3 1/16 in" + "1 5/8 in"',
      '4 11/16 in',
      'woodworkersjournal.com/an-easy-way-to-tackle-fractions',
    ],
    ['round("6.76438 ft", "1/16 in")', '6 ft 9 3/16 in', 'bhlumley.com/tradetesttuneup3.htm'],
    [
      '("60 ft" - "9 in") * ("16 ft 2 in" - "10 in")',
      '908.5 ft2',
      'issuhub.com/view/index/4050?pageIndex=136',
    ],
    ['8 * "1 ft 8 in"', '13 ft 4 in', 'US Army steelworker manual 14251, appendix II'],
  ])('%s is %s (%s)', (formula, wanted) => {
    expect(exactly(value(formula))).toBe(same(wanted));
  });

  it('1/32 in rounds up to 1/16, and 11.96875 in carries to a foot', () => {
    expect(exactly(value('round("0.03125 in", "1/16 in")'))).toBe(same('1/16 in'));
    expect(exactly(value('round("11.96875 in", "1/16 in")'))).toBe(same('1 ft'));
    expect(exactly(value('round("23.99 in", "1/16 in")'))).toBe(same('2 ft'));
  });
});

// NAVEDTRA 14045, Builder (http://www.tpub.com/content/construction/14045/css/14045_145.htm): 3 blocks in
// 4 ft and 3 courses in 2 ft.
describe('masonry counts of the US Navy Builder', () => {
  const blocks = '(length * 3 / "4 ft") * (height * 3 / "2 ft")';

  it('a wall of 100 x 10 ft takes 75 blocks in each of 15 courses, 1,125', () => {
    expect(exactly(value('length * 3 / "4 ft"', { length: '100 ft' }))).toBe(same('75'));
    expect(exactly(value('height * 3 / "2 ft"', { height: '10 ft' }))).toBe(same('15'));
    expect(exactly(value(blocks, { length: '100 ft', height: '10 ft' }))).toBe(same('1125'));
  });

  it('a building of 20 x 8 ft, 8 ft high, takes 56 ft x 0.75 = 42 blocks in 12 courses, 504', () => {
    const around = exactly(value('2 * (a + b) * 3 / "4 ft"', { a: '20 ft', b: '8 ft' }));
    expect(around).toBe(same('42'));
    expect(exactly(value(blocks, { length: '56 ft', height: '8 ft' }))).toBe(same('504'));
  });

  it('420 ft² at 1.125 blocks/ft² take 473 (vbhomerepair.com)', () => {
    expect(exactly(value('ceil(area * 9 / 8 / "1 ft2")', { area: '420 ft2' }))).toBe(same('473'));
  });

  it('a fall of 40 in in courses of 8 in takes 5 steps, and 41 in take 6', () => {
    const steps = (fall: string) =>
      answers(job('stepped-base', { run: '80 ft', fall, course: '8 in' }), 'steps', '1').right;
    expect([steps('40 in'), steps('41 in')]).toEqual([5, 6]);
  });
});

// MIL-HDBK-1110, 9.6.6 (https://ufgscriteria.tpub.com/3_190_06/3_190_060170.htm): 5 °F above the dew point.
it('at a dew point of 50 °F the least surface is 55 °F, and 5.2 F° above it is enough', () => {
  const given = { air: '70 °F', 'dew-point': '50 °F', surface: '55.2 °F' };
  const found = job('dew-point', given);
  expect(verdictOn(found, 'least', '55').kind).toBe('right');
  expect(part(found, 'go').right).toBe(true);
  expect(part(job('dew-point', { ...given, surface: '54.9 °F' }), 'go').right).toBe(false);
});
