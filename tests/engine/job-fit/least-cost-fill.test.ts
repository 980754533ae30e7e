import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leastCostFill } from '#engine/job-fit/least-cost-fill.ts';
import { ranking } from '#engine/job-fit/ranked-cost.ts';
import { shortRoles } from '#engine/job-fit/short-roles.ts';
import { bruteForce } from './brute-force.ts';

const small = fc.integer({ min: 1, max: 4 }).chain((roles) =>
  fc.record({
    places: fc.array(fc.integer({ min: 1, max: 2 }), { minLength: roles, maxLength: roles }),
    costs: fc.array(
      fc.array(fc.option(fc.nat(9), { nil: undefined, freq: 2 }), {
        minLength: roles,
        maxLength: roles,
      }),
      { maxLength: 6 },
    ),
  }),
);

describe('truth', () => {
  test('a square table is filled at least cost', () => {
    // Own table, its six ways added up by hand: 4+3+7, 4+6+6, 2+4+7, 2+6+5, 8+4+6, 8+3+5.
    const costs = [
      [4, 2, 8],
      [4, 3, 6],
      [5, 6, 7],
    ];
    expect(leastCostFill([1, 1, 1], costs)).toMatchObject({ filled: 3, cost: 13 });
  });

  test('filling one place more counts above any cost', () => {
    const costs = [
      [0, 900],
      [0, undefined],
    ];
    expect(leastCostFill([1, 1], costs)).toEqual({ roleOf: [1, 0], filled: 2, cost: 900 });
  });

  test('of equal ways the first in order is taken', () => {
    expect(leastCostFill([1], [[1], [1]]).roleOf).toEqual([0, undefined]);
  });
});

describe('laws', () => {
  test('it fills as many places as any way does, at no more cost', () => {
    fc.assert(
      fc.property(small, ({ places, costs }) => {
        const { filled, cost } = leastCostFill(places, costs);
        expect({ filled, cost }).toEqual(bruteForce(places, costs));
      }),
      { numRuns: 500 },
    );
  });

  test('nobody is where they may not be, no role is overfilled, and the cost is the sum', () => {
    fc.assert(
      fc.property(small, ({ places, costs }) => {
        const { roleOf, filled, cost } = leastCostFill(places, costs);
        const sent = roleOf.flatMap((role, person) =>
          role === undefined ? [] : [{ role, person }],
        );
        expect(sent).toHaveLength(filled);
        expect(sent.reduce((sum, { role, person }) => sum + costs[person]![role]!, 0)).toBe(cost);
        places.forEach((count, role) => {
          expect(sent.filter((one) => one.role === role).length).toBeLessThanOrEqual(count);
        });
      }),
    );
  });

  test('whatever is short is short by a set that asks for more people than there are', () => {
    fc.assert(
      fc.property(small, ({ places, costs }) => {
        const { roleOf, filled } = leastCostFill(places, costs);
        const may = costs.map((row) => row.map((cost) => cost !== undefined));
        const sets = shortRoles(places, may, roleOf);
        const total = places.reduce((sum, count) => sum + count, 0);
        expect(sets.length > 0).toBe(filled < total);
        for (const { roles, people, places: asked } of sets) {
          const able = may.flatMap((row, person) =>
            roles.some((role) => row[role]) ? [person] : [],
          );
          expect(people).toEqual(able);
          expect(asked).toBe(roles.reduce((sum, role) => sum + places[role]!, 0));
          expect(people.length).toBeLessThan(asked);
        }
      }),
      { numRuns: 500 },
    );
  });

  test('ranked costs compare as lists of sums do', () => {
    const rows = fc.array(fc.tuple(fc.nat(50), fc.nat(6), fc.nat(4)), {
      minLength: 4,
      maxLength: 4,
    });
    fc.assert(
      fc.property(rows, rows, (a, b) => {
        const cost = ranking(4, [6, 4]);
        const sums = (all: typeof a) => all[0]!.map((_, at) => all.reduce((s, x) => s + x[at]!, 0));
        const total = (all: typeof a) => all.reduce((sum, one) => sum + cost(one), 0);
        const [x, y] = [sums(a), sums(b)];
        const differs = x.findIndex((one, at) => one !== y[at]);
        expect(Math.sign(total(a) - total(b))).toBe(
          differs < 0 ? 0 : Math.sign(x[differs]! - y[differs]!),
        );
      }),
    );
  });

  test('costs too great to add exactly are refused', () => {
    expect(() => ranking(1000, [1e6, 1e6])([1, 1, 1])).toThrow(RangeError);
  });
});
