import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Surface,
  bridge,
  drape,
  offset,
  pointsOf,
  splice,
  stretch,
} from '#engine/picture/surface.ts';
import { distance } from '#engine/picture/point.ts';

/** A wall 8 in high and a shelf 5 in deep. */
const face: Surface = [
  { at: [0, 8], v: -8 },
  { at: [0, 0], v: 0 },
  { at: [5, 0], v: 5 },
];

describe('truth', () => {
  it('mitres a coat in the corner of wall and shelf', () => {
    expect(pointsOf(offset(face, 0.5))).toEqual([
      [0.5, 8],
      [0.5, 0.5],
      [5, 0.5],
    ]);
  });

  it('takes a stretch from the top of what ends there and to the foot of what begins there', () => {
    const taped = splice(face, -8, -6, offset(stretch(face, -8, -6), 0.2));
    expect(pointsOf(stretch(taped, -8, -6))).toEqual([
      [0.2, 8],
      [0.2, 6],
    ]);
    expect(pointsOf(stretch(taped, -6, -4))).toEqual([
      [0, 6],
      [0, 4],
    ]);
  });

  it('lays a sheet off the edge of a tape in a ramp', () => {
    const taped = splice(face, -8, -6, offset(stretch(face, -8, -6), 0.2));
    const foot = drape(stretch(taped, -8, -1)).find(({ at }) => at[0] === 0)!;
    expect(foot.at[1]).toBeCloseTo(5.65, 9);
  });

  it('bridges a corner in front of it', () => {
    const taut = bridge(face, 0, 1);
    expect(taut.every(({ at }) => distance(at, [0, 0]) > 0.2)).toBe(true);
    expect(taut[0]).toEqual(face[0]);
    expect(taut.at(-1)).toEqual(face.at(-1));
  });
});

describe('laws', () => {
  const strips = fc.array(
    fc.record({
      from: fc.integer({ min: -28, max: 16 }),
      length: fc.integer({ min: 1, max: 20 }),
      thickness: fc.integer({ min: 1, max: 5 }),
    }),
    { maxLength: 8 },
  );

  it('keeps v from falling whatever is laid on the face', () => {
    fc.assert(
      fc.property(strips, (laid) => {
        const surface = laid.reduce<Surface>((under, { from, length, thickness }) => {
          const [a, b] = [from / 4, Math.min(5, (from + length) / 4)];
          return splice(under, a, b, offset(stretch(under, a, b), thickness / 20));
        }, face);
        for (const [at, { v }] of surface.entries()) {
          if (at > 0) expect(v).toBeGreaterThanOrEqual(surface[at - 1]!.v);
        }
        expect(surface[0]!.v).toBe(-8);
        expect(surface.at(-1)!.v).toBe(5);
      }),
    );
  });

  it('finds both ends of any stretch', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -8, max: 4.9, noNaN: true }),
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        (from, length) => {
          const to = Math.min(5, from + length);
          const part = stretch(face, from, to);
          expect(part[0]!.v).toBeCloseTo(from, 8);
          expect(part.at(-1)!.v).toBeCloseTo(to, 8);
        },
      ),
    );
  });
});
