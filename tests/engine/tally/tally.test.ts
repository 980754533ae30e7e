import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wilson } from '#engine/statistics/wilson.ts';
import { spotKey } from '#engine/tally/spot.ts';
import {
  emptyTally,
  merged,
  tallied,
  tallyOf,
  tallyOfOne,
  type One,
  type Tally,
} from '#engine/tally/tally.ts';
import { fewestToSay, whereItGoesWrong } from '#engine/tally/where-it-goes-wrong.ts';
import { built } from '../tracing/built.ts';

const right = ['prime@0', 'set-edge@0', 'hang@500 | turn-up=8 in'];
const ways = [
  right,
  ['prime@0', 'set-edge@0', 'hang@1 | turn-up=8 in'],
  ['prime@0', 'set-edge@0', 'hang@500 | turn-up=1 in'],
  ['prime@0', 'hang@500 | turn-up=8 in', 'set-edge@500'],
  ['hang@0 | turn-up=1 in', 'prime@0', 'heat@1'],
  [],
].map((cards) => built(cards));
const plain = built(['prime', 'hang'], 'plain');

const rushedOnPlain = built(['prime@0', 'hang@1 | turn-up=8 in'], 'plain');
const waitedOnPlain = built(['prime@0', 'hang@500 | turn-up=8 in'], 'plain');

const by = (person: string, way = 0): One => ({ ...ways[way]!, person });

/** Each spot as `hang/setting/turn-up 1/4`. */
const told = (tally: Tally) =>
  tally.map(
    ({ spot, judged, wrong }) =>
      `${spotKey(spot).split('/').slice(1).join('/')} ${wrong}/${judged}`,
  );

describe('truth', () => {
  test('a wall built right judges all there is on it, and finds nothing wrong', () => {
    expect(told(tallyOfOne(by('ana')))).toEqual([
      'order/prime/hang 0/1',
      'order/set-edge/hang 0/1',
      'setting/hang/turn-up 0/1',
      'step/hang 0/1',
      'step/prime 0/1',
      'step/set-edge 0/1',
      'wait/prime 0/1',
    ]);
  });

  test('what a wall does not have, or a review could not judge, is not counted', () => {
    expect(told(tallyOfOne({ ...plain, person: 'ana' }))).toEqual([
      'order/prime/hang 0/1',
      'step/hang 0/1',
      'step/prime 0/1',
    ]);
    expect(told(tallyOfOne(by('ana', 5)))).toEqual([
      'step/hang 1/1',
      'step/prime 1/1',
      'step/set-edge 1/1',
    ]);
  });

  test('reviews sum up, and tell whom it went wrong for', () => {
    const tally = tallyOf([by('ana', 1), by('ana', 3), by('ben', 3), by('ben'), by('eva', 2)]);
    const troubles = whereItGoesWrong(tally);
    expect(
      troubles.map(({ spot, wrong, judged }) => `${spotKey(spot)} ${wrong}/${judged}`),
    ).toEqual([
      'tiny-wall/order/set-edge/hang 2/5',
      'tiny-wall/step/set-edge 2/5',
      'tiny-wall/setting/hang/turn-up 1/5',
      'tiny-wall/step/hang 1/5',
      'tiny-wall/step/prime 1/5',
      'tiny-wall/wait/prime 1/5',
      'tiny-wall/order/prime/hang 0/5',
    ]);
    expect(troubles[0]).toMatchObject({
      persons: [
        { person: 'ana', judged: 2, wrong: 1 },
        { person: 'ben', judged: 2, wrong: 1 },
      ],
      rate: wilson(2, 5),
      isTooFew: true,
    });
  });

  test('twelve in forty come before one in one, whose interval begins higher', () => {
    const tally = tallyOf([
      ...Array.from({ length: 12 }, () => ({ ...rushedOnPlain, person: 'ana' })),
      ...Array.from({ length: 28 }, () => ({ ...waitedOnPlain, person: 'ben' })),
      by('eva', 3),
    ]);
    const [first, ...rest] = whereItGoesWrong(tally);
    expect(first).toMatchObject({ spot: { kind: 'step', step: 'prime' }, wrong: 12, judged: 41 });
    const once = rest.find(({ spot }) => spot.kind === 'order' && spot.before === 'set-edge')!;
    expect(once).toMatchObject({ wrong: 1, judged: 1, isTooFew: true });
    expect(once.rate.low).toBeGreaterThan(first!.rate.low);
    expect(rest.slice(rest.indexOf(once)).every(({ isTooFew }) => isTooFew)).toBe(true);
  });

  test('nine reviews are too few to say, ten are enough', () => {
    const many = (count: number) =>
      whereItGoesWrong(tallyOf(Array.from({ length: count }, () => by('ana', 1))))[0]!;
    expect(many(fewestToSay - 1).isTooFew).toBe(true);
    expect(many(fewestToSay).isTooFew).toBe(false);
    expect(wilson(0, fewestToSay).high).toBeCloseTo(0.2775, 4);
  });
});

const anyOne = fc
  .record({ way: fc.nat(ways.length), person: fc.constantFrom('ana', 'ben', '__proto__', '{"}') })
  .map(({ way, person }): One => ({ ...(ways[way] ?? plain), person }));
const ones = fc.array(anyOne, { maxLength: 12 });

describe('laws', () => {
  test('the order in which reviews are tallied does not matter', () => {
    const shuffled = ones.chain((all) =>
      fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length })),
    );
    fc.assert(
      fc.property(shuffled, ([all, mixed]) => {
        expect(JSON.stringify(mixed.reduce(tallied, emptyTally))).toBe(
          JSON.stringify(tallyOf(all)),
        );
      }),
    );
  });

  test('nor does how they are grouped', () => {
    fc.assert(
      fc.property(ones, ones, ones, (a, b, c) => {
        const [x, y, z] = [tallyOf(a), tallyOf(b), tallyOf(c)];
        const all = JSON.stringify(tallyOf([...a, ...b, ...c]));
        expect(JSON.stringify(merged(merged(x, y), z))).toBe(all);
        expect(JSON.stringify(merged(x, merged(y, z)))).toBe(all);
        expect(JSON.stringify(merged(y, merged(z, x)))).toBe(all);
        expect(merged(x, emptyTally)).toEqual(x);
      }),
    );
  });

  test('a tally is the same after a way through JSON', () => {
    fc.assert(
      fc.property(ones, (all) => {
        const tally = tallyOf(all);
        expect(JSON.parse(JSON.stringify(tally))).toEqual(tally);
      }),
    );
  });

  test('no more goes wrong than was judged, and every person named did go wrong', () => {
    fc.assert(
      fc.property(ones, (all) => {
        for (const { judged, wrong, persons, rate } of whereItGoesWrong(tallyOf(all))) {
          expect(wrong).toBeLessThanOrEqual(judged);
          expect(persons.reduce((sum, one) => sum + one.wrong, 0)).toBe(wrong);
          expect(persons.every((one) => one.wrong > 0)).toBe(true);
          expect(rate.low).toBeLessThanOrEqual(wrong / judged);
        }
      }),
    );
  });
});
