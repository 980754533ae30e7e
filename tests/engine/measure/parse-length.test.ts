import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { absolute, roundTo } from '#engine/measure/arithmetic.ts';
import { quantity } from '#engine/measure/conversion.ts';
import { formatLength, millimetre, sixteenth } from '#engine/measure/format-length.ts';
import type { LengthStyle } from '#engine/measure/format-length.ts';
import { parseLength } from '#engine/measure/parse-quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { rational } from '#engine/measure/rational.ts';
import { ok } from '#engine/result.ts';
import { lengths } from './arbitrary.ts';

const inches = (n: number, d = 1) => quantity(rational(n, d), 'in');
const metres = (n: number, d = 1) => quantity(rational(n, d), 'm');

/** Every way here of writing one length. */
const writings: readonly (readonly [Quantity<'length'>, readonly string[]])[] = [
  [
    inches(301, 2),
    [
      `12'-6 1/2"`,
      `12' 6 1/2"`,
      `12'6 1/2"`,
      `12'-6-1/2"`,
      `12' - 6 1/2"`,
      '12’-6 1/2”',
      '12′ 6½″',
      '12‘ 6 ½“',
      '12´ 6 1⁄2"',
      `12' 6 1/2''`,
      '12 ft 6.5 in',
      '12 ft 6.5 in.',
      '12 ft. 6.50 in.',
      '12ft6.5in',
      '12 ft-6 1/2 in',
      '12 FT 6 1/2 IN',
      '12 feet 6 1/2 inches',
      '12 feet, 6 1/2 inches',
      '12 feet and 6 1/2 inches',
      '12 foot 6 1/2 inch',
      '12 pies 6 1/2 pulgadas',
      '12 pies y 6½ pulg.',
      '12 pies 6.5 pulg',
      '12 pies 6,5 pulg',
      '4 yd 6 1/2 in',
      '150 1/2 in',
      '150.5 in',
      '150,5 in',
      '301/2"',
      '150½"',
      '150-1/2 in',
      '150 1/2"',
      `  12'-6 1/2"  `,
      '12\u00a0ft\u202f6.5\u00a0in',
    ],
  ],
  [inches(150), [`12'-6"`, `12'6"`, `12' 6"`, '12 ft 6 in', '12 1/2 ft', '12½’', '12.5 lf']],
  [
    inches(-150),
    [`-12'-6"`, `−12'-6"`, `–12' 6"`, '- 12 ft 6 in', '-12.5 ft', '−12 ½ ft', '-150"'],
  ],
  [inches(1, 2), ['1/2"', '½"', '.5"', '0.5 in', ',5 in', '0 1/2"', `0'-0 1/2"`, '500 mils']],
  [inches(1, 8), ['⅛ in', '1/8 in', '0.125 in', '0,125 in', '2/16"']],
  [inches(13, 2), ['6-1/2"', '6 1/2"', '6½"', '6 ½ in', '13/2 in']],
  [inches(293, 2), [`12'2 1/2"`, `12ft2.5"`, '12ft2½"', '12ft2 1/2 in', '12 ft 2,5 in']],
  [metres(382, 100), ['3.82 m', '3,82 m', '3 m 82 cm', '382 cm', '3820 mm', '3 metros 82 cm']],
  [metres(3_005, 1000), ['3 m 5 mm', '3 m, 5 mm', '3005 millimetres', '3005 milímetros']],
  [metres(12_505, 10), ['1,250.5 m', '1.250,5 m', '1250.5 m', '1250,5 m']],
  [metres(1_250_125, 1000), ['1,250.125 m', '1.250,125 m', '1250.125 m', '1250,125 m']],
  [metres(1_250_000), ['1,250,000 m', '1.250.000 m', '1250000 m']],
  [inches(0), ['0 in', `0'-0"`, '-0"', '0 mm', '0/5 in']],
];

describe('truth', () => {
  const cases = writings.flatMap(([length, texts]) => texts.map((text) => [text, length] as const));

  test.each(cases)('%s', (text, length) => {
    expect(parseLength(text)).toEqual(ok(length));
  });

  test('a point before three digits is a decimal sign, never a sign for thousands', () => {
    expect(parseLength('1.250 m')).toEqual(ok(metres(5, 4)));
    expect(parseLength('1250.125 m')).toEqual(ok(metres(1_250_125, 1000)));
  });
});

describe('laws', () => {
  const styles: readonly LengthStyle[] = [
    { system: 'us' },
    { system: 'us', style: 'inches' },
    { system: 'us', nearest: inches(1, 64) },
    { system: 'us', nearest: inches(1, 10) },
    { system: 'metric' },
    { system: 'metric', style: 'millimetres' },
    { system: 'metric', nearest: metres(1, 100) },
  ];

  test('what is written reads back as the rounded length, in every style', () => {
    fc.assert(
      fc.property(lengths, fc.constantFrom(...styles), (length, style) => {
        const nearest = style.nearest ?? (style.system === 'us' ? sixteenth : millimetre);
        const text = formatLength(length, style);
        expect(parseLength(text)).toEqual(ok(roundTo(length, nearest)));
      }),
    );
  });

  test('a sign in front turns the whole length round', () => {
    fc.assert(
      fc.property(lengths.map(absolute), (length) => {
        const text = formatLength(length, { system: 'us' });
        const [there, back] = [parseLength(text), parseLength(`-${text}`)];
        expect(there.ok && back.ok && there.value.value.add(back.value.value).n).toBe(0n);
      }),
    );
  });
});
