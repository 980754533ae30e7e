import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { randomFrom, whole } from '#engine/random.ts';
import { cholesky, inverse, solved } from '#engine/statistics/cholesky.ts';
import { distinctRows } from '#engine/statistics/distinct-rows.ts';
import { expectation, type Parameters } from '#engine/statistics/expectation.ts';
import { observedInformation } from '#engine/statistics/observed-information.ts';
import { patternsOf } from '#engine/statistics/patterns.ts';
import { normalQuadrature } from '#engine/statistics/quadrature.ts';

const items = 4;
const quadrature = normalQuadrature(41);

/** Any answers, any absent, at parameters that are no maximum, some slopes below 0. */
function anywhere(seed: number) {
  const random = randomFrom(`likelihood/${seed}`);
  const persons = whole(random, 1, 60);
  const scores = Uint8Array.from({ length: persons * items }, () => whole(random, 0, 2));
  const patterns = patternsOf({ persons, items, scores }, [...Array(items).keys()]);
  const at = (low: number, high: number): Float64Array =>
    Float64Array.from({ length: items }, () => whole(random, low, high) / 100);
  return { patterns, parameters: { slopes: at(-50, 250), intercepts: at(-200, 200) } };
}

const nudged = ({ slopes, intercepts }: Parameters, at: number, by: number): Parameters => {
  const moved = { slopes: slopes.slice(), intercepts: intercepts.slice() };
  if (at < items) moved.slopes[at]! += by;
  else moved.intercepts[at - items]! += by;
  return moved;
};

describe('laws', () => {
  test('slopes of the likelihood are its differences', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { patterns, parameters } = anywhere(seed);
        fc.pre(patterns.persons > 0);
        const { gradient } = expectation(patterns, quadrature, parameters);
        const step = 1e-5;
        for (let at = 0; at < 2 * items; at += 1) {
          const [up, down] = [step, -step].map(
            (by) => expectation(patterns, quadrature, nudged(parameters, at, by)).logLikelihood,
          );
          expect(gradient[at]).toBeCloseTo((up! - down!) / (2 * step), 5);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('its bend is the difference of its slopes', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { patterns, parameters } = anywhere(seed);
        fc.pre(patterns.persons > 0);
        const here = expectation(patterns, quadrature, parameters);
        const bend = observedInformation(patterns, quadrature, here);
        const step = 1e-5;
        for (let at = 0; at < 2 * items; at += 1) {
          const [up, down] = [step, -step].map(
            (by) => expectation(patterns, quadrature, nudged(parameters, at, by)).gradient,
          );
          for (let other = 0; other < 2 * items; other += 1) {
            const slope = (up![other]! - down![other]!) / (2 * step);
            expect(bend[at * 2 * items + other]).toBeCloseTo(-slope, 5);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  test('patterns hold every person who answered something, once', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 40 }).chain((persons) =>
          fc.array(fc.integer({ min: 0, max: 2 }), {
            minLength: persons * 3,
            maxLength: persons * 3,
          }),
        ),
        (scores) => {
          const persons = scores.length / 3;
          const rows = Array.from({ length: persons }, (_, at) => scores.slice(at * 3, at * 3 + 3));
          const told = rows.filter((row) => row.some((score) => score < 2));
          const found = patternsOf(
            { persons, items: 3, scores: Uint8Array.from(scores) },
            [0, 1, 2],
          );
          expect(found.persons).toBe(told.length);
          expect(found.counts).toHaveLength(new Set(told.map(String)).size);
          expect([...found.rights]).toEqual(
            [0, 1, 2].map((item) => told.filter((row) => row[item] === 1).length),
          );
          for (const { from, to, answered } of found.forms) {
            for (let at = from; at < to; at += 1) {
              const right = found.right.subarray(found.rightFrom[at], found.rightFrom[at + 1]);
              const row = [0, 1, 2].map((item) =>
                !answered.includes(item) ? 2 : right.includes(item) ? 1 : 0,
              );
              const same = told.filter((other) => String(other) === String(row));
              expect(found.counts[at]).toBe(same.length);
            }
          }
        },
      ),
    );
  });

  test('rows are of one kind where they are the same, and only there', () => {
    const bytes = fc.array(fc.integer({ min: 0, max: 1 }), { minLength: 60, maxLength: 60 });
    fc.assert(
      fc.property(bytes, (values) => {
        const { first, kind } = distinctRows(Uint8Array.from(values), 20, 3);
        const row = (at: number): string => values.slice(at * 3, at * 3 + 3).join('');
        expect([...kind].map((one) => row(first[one]!))).toEqual([...kind.keys()].map(row));
        expect(new Set(first.map(row)).size).toBe(first.length);
      }),
    );
  });

  test('a matrix times its inverse is one, and what has a level direction has no root', () => {
    const values = fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 16, maxLength: 16 });
    fc.assert(
      fc.property(values, (half) => {
        const of = (i: number, j: number): number =>
          [0, 1, 2, 3].reduce(
            (sum, k) => sum + half[i * 4 + k]! * half[j * 4 + k]!,
            i === j ? 1 : 0,
          );
        const matrix = Float64Array.from({ length: 16 }, (_, at) => of(at >> 2, at & 3));
        const factor = cholesky(matrix, 4)!;
        const back = inverse(factor);
        for (let i = 0; i < 4; i += 1) {
          const row = matrix.subarray(i * 4, i * 4 + 4);
          for (let j = 0; j < 4; j += 1) {
            const sum = row.reduce((so, value, k) => so + value * back[k * 4 + j]!, 0);
            expect(sum).toBeCloseTo(i === j ? 1 : 0, 6);
          }
          expect(solved(factor, row.slice())[i]).toBeCloseTo(1, 6);
        }
      }),
    );
    expect(cholesky(Float64Array.of(1, 1, 1, 1), 2)).toBeUndefined();
    expect(cholesky(Float64Array.of(1, 2, 2, 1), 2)).toBeUndefined();
  });

  test('points and weights give the moments of the normal distribution', () => {
    const { points, weights } = normalQuadrature();
    // 1, 0, 1, 0, 3, 0, 15: products of odd numbers.
    for (const [power, moment] of [1, 0, 1, 0, 3, 0, 15].entries()) {
      const sum = points.reduce((so, x, q) => so + weights[q]! * x ** power, 0);
      expect(sum).toBeCloseTo(moment, 3);
    }
    expect(() => normalQuadrature(1)).toThrow(RangeError);
  });
});
