import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lightestCover, type Cover } from '#engine/marking/lightest-cover.ts';
import type { Pair } from '#engine/method/partial-order.ts';

type Given = { readonly pairs: readonly Pair[]; readonly weights: readonly number[] };

const coverOf = ({ pairs, weights }: Given) => lightestCover(pairs, weights);

describe('truth', () => {
  it('a star is touched at its centre, unless that weighs more than all around it', () => {
    const star = [1, 2, 3].map((point): Pair => [0, point]);
    expect(lightestCover(star, [2, 1, 1, 1])).toEqual({
      firsts: [true, false, false, false],
      seconds: [false, false, false, false],
    });
    expect(lightestCover(star, [3, 1, 1, 1])).toEqual({
      firsts: [false, false, false, false],
      seconds: [false, true, true, true],
    });
  });

  it('as many members are needed as pairs that do not meet (König 1931)', () => {
    // D. König, "Gráfok és mátrixok", Matematikai és Fizikai Lapok 38, 1931. Between two sixes of a ring
    // of 12 there are 6 such pairs.
    const ring = [...Array(6).keys()].flatMap((i): Pair[] => [
      [i, i],
      [i, (i + 1) % 6],
    ]);
    expect(sizeOf(lightestCover(ring, Array<number>(6).fill(1)))).toBe(6);
  });

  it('without pairs nothing is needed', () => {
    expect(lightestCover([], [1, 1])).toEqual({ firsts: [false, false], seconds: [false, false] });
  });
});

describe('laws', () => {
  const anyPairs: fc.Arbitrary<Given> = fc.integer({ min: 1, max: 5 }).chain((members) =>
    fc.record({
      pairs: fc.array(fc.tuple(fc.nat(members - 1), fc.nat(members - 1)), { maxLength: 12 }),
      weights: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: members, maxLength: members }),
    }),
  );

  it('touches every pair, no cover is lighter, and of those as light it has the most seconds', () => {
    fc.assert(
      fc.property(anyPairs, (given) => {
        const found = coverOf(given);
        const covers = everyCover(given);
        expect(covers).toContainEqual(found);
        const least = Math.min(...covers.map((cover) => weigh(given, cover)));
        expect(weigh(given, found)).toBe(least);
        for (const other of covers.filter((cover) => weigh(given, cover) === least)) {
          found.firsts.forEach((taken, member) => taken && expect(other.firsts[member]).toBe(true));
          other.seconds.forEach(
            (taken, member) => taken && expect(found.seconds[member]).toBe(true),
          );
        }
      }),
      { numRuns: 300 },
    );
  });

  it('does not depend on how the pairs are listed', () => {
    const listedTwice = anyPairs.chain((given) =>
      fc.tuple(
        fc.constant(given),
        fc.shuffledSubarray([...given.pairs], { minLength: given.pairs.length }),
      ),
    );
    fc.assert(
      fc.property(listedTwice, ([given, pairs]) => {
        expect(coverOf({ ...given, pairs: [...pairs, ...pairs] })).toEqual(coverOf(given));
      }),
    );
  });
});

const sizeOf = ({ firsts, seconds }: Cover): number =>
  [...firsts, ...seconds].filter((taken) => taken).length;

const weigh = ({ weights }: Given, { firsts, seconds }: Cover): number =>
  weights.reduce(
    (sum, weight, member) => sum + weight * (Number(firsts[member]) + Number(seconds[member])),
    0,
  );

const everyCover = ({ pairs, weights }: Given): readonly Cover[] =>
  [...Array(4 ** weights.length).keys()]
    .map((set) => ({
      firsts: weights.map((_, member) => ((set >> member) & 1) === 1),
      seconds: weights.map((_, member) => ((set >> (weights.length + member)) & 1) === 1),
    }))
    .filter(({ firsts, seconds }) => pairs.every(([a, b]) => firsts[a] || seconds[b]));
