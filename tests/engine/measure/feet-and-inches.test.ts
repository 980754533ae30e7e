import { describe, expect, test } from 'vitest';
import { add, multiply, scale, subtract } from '#engine/measure/arithmetic.ts';
import { amountIn } from '#engine/measure/conversion.ts';
import { formatLength } from '#engine/measure/format-length.ts';
import { formatQuantity } from '#engine/measure/format-quantity.ts';
import { parseLength } from '#engine/measure/parse-quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { expectA } from '#engine/measure/quantity.ts';
import { rationalText } from '#engine/measure/rational.ts';

type Length = Quantity<'length'>;

const length = (text: string): Length => {
  const read = parseLength(text);
  if (!read.ok) throw new Error(read.error.message.en);
  return read.value;
};

type Reckoned = readonly [problem: string, result: Length];

const as = (a: string): Reckoned => [a, length(a)];
const sum = (a: string, b: string): Reckoned => [`${a} + ${b}`, add(length(a), length(b))];
const less = (a: string, b: string): Reckoned => [`${a} - ${b}`, subtract(length(a), length(b))];
const times = (n: bigint, a: string): Reckoned => [`${n} x ${a}`, scale(length(a), n)];

const algebra =
  'OpenStax, Elementary Algebra, module m82461 (github.com/openstax/osbooks-prealgebra-bundle)';
const prealgebra = 'OpenStax, Prealgebra, module m81330';
const treneri = 'https://treneri.me/adding-and-subtracting-feet-and-inches';
const queries = 'https://constructionqueries.wordpress.com/2014/12/18/foot-inches-conversion/';
const blueprint = 'https://issuhub.com/view/index/4050?pageIndex=136';

/** Worked examples, each with the answer printed and where it was read. */
const examples: readonly (readonly [...Reckoned, answer: string, source: string])[] = [
  [...sum('8 ft 7 in', '12 ft 11 in'), '21 ft 6 in', algebra],
  [...sum('6 ft 6 in', '3 ft 8 in'), '10 ft 2 in', algebra],
  [...times(4n, '6 ft 4 in'), '25 ft 4 in', prealgebra],
  [...sum('6 ft 4 in', '2 ft 10 in'), '9 ft 2 in', prealgebra],
  [...as('6 ft 4 in'), '76 in', prealgebra],
  [...as('66 in'), '5.5 ft', prealgebra],
  [...as('30 in'), '2.5 ft', prealgebra],
  [...as('45 in'), '3.75 ft', prealgebra],
  [
    ...less('14 ft 4 in', '8 ft 8 in'),
    '5 ft 8 in',
    'https://www.gradesaver.com/textbooks/math/applied-mathematics/elementary-technical-mathematics/chapter-1-unit-1b-review-page-55/20',
  ],
  [...less('6 ft 8 in', '3 ft 10 in'), '2 ft 10 in', 'http://aaamath.com/B/mea-sub-ftin.htm'],
  [...less('5 ft 2 in', '1 ft 8 in'), '3 ft 6 in', treneri],
  [...sum('3 ft 6 in', '2 ft 9 in'), '6 ft 3 in', treneri],
  [...sum('7 ft 10 in', '8 ft 5 in'), '195 in', queries],
  [...sum('7 ft 10 in', '8 ft 5 in'), '16.25 ft', queries],
  [...sum('7 ft 10 in', '8 ft 5 in'), '16 ft 3 in', queries],
  [
    ...sum('3-1/16 in', '1-5/8 in'),
    '4-11/16 in',
    'http://www.woodworkersjournal.com/an-easy-way-to-tackle-fractions/',
  ],
  [...less(`60'-0"`, `0'-9"`), `59'-3"`, blueprint],
  [...less(`16'-2"`, `0'-10"`), `15'-4"`, blueprint],
  [
    ...times(8n, '1 ft 8 in'),
    '13 ft 4 in',
    'our reckoning, by the method of http://constructionmanuals.tpub.com/14251/css/Appendix-II-Continued-326.htm',
  ],
];

describe('truth', () => {
  for (const [problem, result, answer, source] of examples) {
    test(`${problem} is ${answer} (${source})`, () => {
      expect(result).toEqual(length(answer));
    });
  }

  test('6.76438 ft is 6 ft 9 3/16 in to the sixteenth', () => {
    // https://bhlumley.com/tradetesttuneup3.htm: 2.76 sixteenths are rounded to 3.
    expect(formatLength(length('6.76438 ft'), { system: 'us' })).toBe(`6'-9 3/16"`);
  });

  test('59-3 by 15-4 are 908.5 square feet', () => {
    // https://issuhub.com/view/index/4050?pageIndex=136 prints 908, without the half.
    const area = expectA(multiply(length(`59'-3"`), length(`15'-4"`)), 'area');
    expect(rationalText(amountIn(area, 'ft2'))).toBe('1817/2');
    expect(formatQuantity(area, 'ft2')).toBe('908.5 ft²');
  });
});
