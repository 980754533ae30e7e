import { expect, test } from 'vitest';
import { quantity } from '#engine/measure/conversion.ts';
import { rational } from '#engine/measure/rational.ts';
import { drynessAfter } from '#engine/method/dryness.ts';
import type { Drying } from '#engine/method/sequence.ts';

const words = { en: '', es: '' };
const drying = {
  number: 'touch-dry-time',
  because: words,
  test: words,
  severity: 'critical',
  least: quantity(2, 'min'),
} as unknown as Drying;

test.each([
  [0, 'wet'],
  [999, 'wet'],
  [1000, 'tacky'],
  [1999, 'tacky'],
  [2000, 'dry'],
  [9000, 'dry'],
])('what dries in 2 min is, after %d thousandths of a minute, %s', (thousandths, dryness) => {
  expect(drynessAfter(drying, rational(thousandths, 1000))).toBe(dryness);
});
