import { describe, expect, test } from 'vitest';
import type { MockUpPart } from '#engine/exam/scheme.ts';
import { drawProblems } from '#engine/exam/draw-problems.ts';
import { drawWalls } from '#engine/exam/draw-walls.ts';
import { mockUpResult, type Built } from '#engine/exam/mock-up-result.ts';
import { holds } from '#engine/method/site.ts';
import { content } from '../../content/walls.ts';

const schemes = [...content.schemes.values()];
const mockUps = schemes.flatMap((scheme) =>
  scheme.parts.flatMap((part) => (part.kind === 'mock-up' ? [{ scheme, part }] : [])),
);
const first = mockUps[0]!.part;
const part: MockUpPart = { ...first, builds: 2, outcome: 'accept' };
const built = (score: number, outcome: Built['outcome'] = 'accept'): Built => ({ score, outcome });

describe('truth', () => {
  test('every wall has to reach the mark by itself', () => {
    // The mark is 90 %.
    expect(mockUpResult(part, [built(90), built(100)])).toBe('passed');
    expect(mockUpResult(part, [built(89.9), built(100)])).toBe('failed');
  });

  test('a wall that was not built is not passed', () => {
    expect(mockUpResult(part, [built(100)])).toBe('failed');
  });

  test('rework passes only where the scheme says so, and tear out never', () => {
    const lenient: MockUpPart = { ...part, outcome: 'rework' };
    const walls = [built(95), built(95, 'rework')];
    expect([part, lenient].map((each) => mockUpResult(each, walls))).toEqual(['failed', 'passed']);
    expect(mockUpResult(lenient, [built(95), built(99, 'tear-out')])).toBe('failed');
  });
});

describe('laws', () => {
  test('walls are as many as asked for, each another one, covered, and the same for the same seed', () => {
    for (const { scheme, part } of mockUps) {
      const method = content.methods.get(part.method)!;
      for (let seed = 0; seed < 50; seed += 1) {
        const drawn = drawWalls(scheme, part, method, seed);
        expect(new Set(drawn.map((site) => JSON.stringify(site))).size).toBe(part.builds);
        expect(drawn.every((site) => holds(scheme.covers.get(method.id)!, site))).toBe(true);
        expect(drawWalls(scheme, part, method, seed)).toEqual(drawn);
      }
    }
  });

  test('every wall that is covered is drawn by some seed', () => {
    const { scheme, part } = mockUps.find(({ part }) => part.sites === 'random')!;
    const method = content.methods.get(part.method)!;
    const seeds = Array.from({ length: 600 }, (_, seed) => seed);
    const drawn = seeds.flatMap((seed) => drawWalls(scheme, part, method, seed));
    // Two backings, two edges, two joints and three kinds of weather, without corners.
    expect(new Set(drawn.map((site) => JSON.stringify(site))).size).toBe(24);
  });

  test('families take turns, so that none comes twice before all have come', () => {
    const takeoff = schemes.flatMap(({ parts }) => parts).find(({ kind }) => kind === 'takeoff');
    if (takeoff?.kind !== 'takeoff') throw new Error('no scheme has a take-off');
    const { families } = takeoff;
    for (let seed = 0; seed < 50; seed += 1) {
      const long = { ...takeoff, count: families.length * 2 + 1 };
      const drawn = drawProblems(long, seed).map(({ family }) => family);
      expect(drawn).toHaveLength(long.count);
      const rounds = [0, families.length].map((from) => drawn.slice(from, from + families.length));
      for (const round of rounds) expect(round.toSorted()).toEqual(families.toSorted());
    }
  });
});
