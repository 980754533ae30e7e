import { describe, expect, test } from 'vitest';
import { randomFrom } from '#engine/random.ts';
import { absent, type Responses } from '#engine/statistics/responses.ts';
import { drawAbilities, simulateResponses } from '#engine/statistics/simulate-responses.ts';
import { type Recovery, recover } from './recovery.ts';

/** Unbiased, as near as its own errors say, and inside its intervals as often as promised. */
function expectHonest(found: Recovery, rmse: number): void {
  expect(Math.abs(found.bias)).toBeLessThan(found.rmse / 4);
  expect(found.rmse).toBeLessThan(rmse);
  expect(found.rmse / found.said).toBeGreaterThan(0.85);
  expect(found.rmse / found.said).toBeLessThan(1.15);
  expect(found.covered).toBeGreaterThan(0.92);
  expect(found.covered).toBeLessThan(0.98);
}

/** Two forms of twelve: everybody gets the first eight of twenty, and one half of the others. */
const twoForms = ({ persons, items, scores }: Responses): Responses => ({
  persons,
  items,
  scores: scores.map((score, at) => {
    const [person, item] = [Math.floor(at / items), at % items];
    return item >= 8 && item - 8 < 6 === (person % 2 === 0) ? absent : score;
  }),
});

describe('laws', () => {
  test('curves are found again: a slope for each, 1000 persons, 20 items', () => {
    const found = recover('slope-each', { persons: 1000, items: 20, runs: 40, seed: 'each' });
    expect(found.stopped).toBe(0);
    expectHonest(found.slope, 0.16);
    expectHonest(found.intercept, 0.14);
  });

  test('curves are found again: one slope for all, 300 persons, 12 items', () => {
    const found = recover('slope-common', { persons: 300, items: 12, runs: 30, seed: 'common' });
    expect(found.stopped).toBe(0);
    expectHonest(found.intercept, 0.22);
  });

  test('curves are found again where each person got one of two forms', () => {
    const sizes = { persons: 1500, items: 20, runs: 40, seed: 'forms' };
    const found = recover('slope-each', sizes, twoForms);
    expect(found.stopped).toBe(0);
    expectHonest(found.slope, 0.2);
    expectHonest(found.intercept, 0.18);
  });

  test('made-up abilities are standard normal, and answers come as often as their curve says', () => {
    const random = randomFrom('made up');
    const abilities = drawAbilities(random, 40_000);
    const mean = abilities.reduce((sum, one) => sum + one, 0) / 40_000;
    const square = abilities.reduce((sum, one) => sum + one * one, 0) / 40_000;
    const within = abilities.filter((one) => Math.abs(one) < 1).length / 40_000;
    // Five standard errors of each.
    expect(Math.abs(mean)).toBeLessThan(5 / 200);
    expect(Math.abs(square - 1)).toBeLessThan((5 * Math.SQRT2) / 200);
    expect(Math.abs(within - 0.6826895)).toBeLessThan((5 * 0.4654) / 200);
    const curve = { slope: 2, intercept: -1 };
    const { scores } = simulateResponses(random, [curve], new Float64Array(40_000).fill(1));
    const right = scores.reduce((sum, score) => sum + score, 0) / 40_000;
    expect(Math.abs(right - 1 / (1 + Math.exp(-1)))).toBeLessThan((5 * 0.4434) / 200);
  });

  test('the same seed makes the same answers', () => {
    const draw = () => {
      const random = randomFrom('same');
      return simulateResponses(random, [{ slope: 1, intercept: 0 }], drawAbilities(random, 50));
    };
    expect(draw()).toEqual(draw());
  });
});
