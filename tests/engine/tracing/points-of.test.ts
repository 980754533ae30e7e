import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { partOf } from '#engine/method/part-of.ts';
import { holds } from '#engine/method/site.ts';
import { keyOf } from '#engine/tracing/key-point.ts';
import { mostTried, type PointSeen, pointsOf, type Tried } from '#engine/tracing/points-of.ts';
import { built, tinyMethod } from './built.ts';

const right = built(['prime@0', 'set-edge@0', 'hang@500 | turn-up=8 in']);
const low = built(['prime@0', 'set-edge@0', 'hang@500 | turn-up=1 in']);
const plain = built(['prime@0', 'hang@500 | turn-up=8 in'], 'plain');

const on = (day: number) => new Date(Date.UTC(2030, 4, day)).toISOString();
const tried = (...all: readonly (typeof right)[]): readonly Tried[] =>
  all.map((one, at) => ({ ...one, finished: on(at + 1) }));

const told = (all: readonly Tried[]) =>
  pointsOf(all).methods[0]!.points.map(
    ({ point, right, seen, sureness }) =>
      `${keyOf(point).split('/').slice(1).join('/')} ${right}/${seen} ${sureness}`,
  );

describe('truth', () => {
  test('nothing built, nothing known', () => {
    expect(pointsOf([])).toEqual({ attempts: 0, methods: [], next: [] });
  });

  test('three right are sure, two nearly, one wrong not yet, and what no wall showed is unseen', () => {
    expect(told(tried(right, right, right))).toEqual([
      'prime/place 3/3 sure',
      'prime/wait 3/3 sure',
      'set-edge/place 3/3 sure',
      'hang/place 3/3 sure',
      'hang/setting/turn-up 3/3 sure',
    ]);
    expect(told(tried(plain, low))).toEqual([
      'prime/place 2/2 nearly',
      'prime/wait 2/2 nearly',
      'set-edge/place 1/1 nearly',
      'hang/place 2/2 nearly',
      'hang/setting/turn-up 1/2 not-yet',
    ]);
    expect(told(tried(plain))[2]).toBe('set-edge/place 0/0 unseen');
  });

  test('each says when it was last seen, and its words', () => {
    const [prime, , edge, , turnUp] = pointsOf(tried(right, plain)).methods[0]!.points;
    expect(prime).toMatchObject({ lastSeen: on(2), ask: undefined });
    expect(edge).toMatchObject({ lastSeen: on(1), step: tinyMethod.steps[1]!.say });
    expect(turnUp!.ask).toEqual(tinyMethod.steps[2]!.settings[0]!.ask);
  });

  test('what comes next is the least sure, on a wall that has it, in a stretch of that whole wall', () => {
    const next = pointsOf(tried(low, plain, plain)).next;
    expect(keyOf(next[0]!.point)).toBe('tiny-wall/set-edge/place');
    expect(next[0]!.site).toMatchObject({ edge: 'drip' });
    expect(pointsOf(tried(right, low)).next[0]).toMatchObject({
      point: { kind: 'setting', setting: 'turn-up' },
      part: ['set-edge', 'hang'],
    });
  });

  test('a wall that nobody built yet is found for a step that no wall so far had', () => {
    const edge = pointsOf(tried(plain), 9).next.find(({ point }) => point.step === 'set-edge')!;
    expect(edge.sureness).toBe('unseen');
    expect(holds(tinyMethod.steps[1]!.when, edge.site)).toBe(true);
  });

  test('after a stretch the next one is still one of the whole wall', () => {
    const { sequence } = low.attempt;
    const ends = [sequence.steps[2]!.id, sequence.steps[2]!.id] as const;
    const stretch = { ...low, attempt: { ...low.attempt, sequence: partOf(sequence, ends)! } };
    const next = pointsOf([{ ...stretch, finished: on(1) }]).next[0]!;
    expect(next.part).toEqual(['set-edge', 'hang']);
  });

  test('of very many the last are taken', () => {
    const all = tried(low, ...Array.from({ length: mostTried }, () => right));
    const { attempts, methods } = pointsOf(all);
    expect(attempts).toBe(mostTried);
    expect(methods[0]!.points.every(({ right, seen }) => right === seen)).toBe(true);
  });
});

describe('laws', () => {
  test('what is sure is never to practise, and never more is right than was seen', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(right, low, plain), { maxLength: 12 }), (ways) => {
        const { methods, next } = pointsOf(tried(...ways), 99);
        const points = methods.flatMap((method) => method.points);
        expect(points.every(({ right, seen }) => right <= seen)).toBe(true);
        const unsure = points.filter(({ sureness }) => sureness !== 'sure');
        const names = (some: readonly PointSeen[]) =>
          some.map(({ point }) => keyOf(point)).toSorted();
        expect(names(next)).toEqual(names(unsure));
      }),
    );
  });
});
