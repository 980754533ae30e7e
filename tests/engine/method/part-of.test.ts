import { describe, expect, it } from 'vitest';
import { partOf, placesOf } from '#engine/method/part-of.ts';
import { precedes } from '#engine/method/partial-order.ts';
import { walls } from '../../content/walls.ts';

const someWalls = walls.filter((_, place) => place % 11 === 0);

describe('laws', () => {
  it.each(someWalls)('a part of $name binds its steps as the whole does', ({ sequence }) => {
    const [from, to] = [sequence.steps[2]!.id, sequence.steps.at(-3)!.id];
    const places = placesOf(sequence, [from, to])!;
    const part = partOf(sequence, [from, to])!;
    expect(part.steps.map(({ id }) => id)).toEqual(sequence.steps.slice(2, -2).map(({ id }) => id));
    places.forEach((a, i) =>
      places.forEach((b, j) => {
        expect(precedes(part.order, i, j)).toBe(precedes(sequence.order, a, b));
      }),
    );
  });

  it('a part of one step is that step alone', () => {
    const { sequence } = walls[0]!;
    const { id } = sequence.steps[4]!;
    expect(partOf(sequence, [id, id])?.steps.map((step) => step.id)).toEqual([id]);
  });

  it('is no part from a later step to an earlier one, nor of a step that is not there', () => {
    const { sequence } = walls[0]!;
    const [a, b] = [sequence.steps[0]!.id, sequence.steps[1]!.id];
    expect(partOf(sequence, [b, a])).toBeUndefined();
    expect(partOf(sequence, [a, 'paint-it' as typeof a])).toBeUndefined();
  });
});
