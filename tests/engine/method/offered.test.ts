import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { add, compare } from '#engine/measure/arithmetic.ts';
import { quantity } from '#engine/measure/conversion.ts';
import { rational } from '#engine/measure/rational.ts';
import type { Entry } from '#engine/method/data-sheet.ts';
import type { NumberId } from '#engine/method/method.ts';
import { choicesOf, isSettable, limitsOf, nudged } from '#engine/method/offered.ts';
import { judge } from '#engine/method/rule.ts';
import { content } from '../../content/walls.ts';

const mils = (...values: readonly number[]) => values.map((value) => quantity(value, 'mil'));
const inches = (value: number) => quantity(value, 'in');

const range: Entry = { kind: 'range', from: inches(4), to: inches(14), by: inches(3) };
const straps: Entry = { kind: 'one-of', values: mils(33, 43, 54, 68, 97) };

describe('truth', () => {
  test('4 to 14 by 3 offers 4, 7, 10 and 13', () => {
    expect(choicesOf(range)).toEqual([4, 7, 10, 13].map(inches));
  });

  test('a list offers its values', () => {
    expect(choicesOf(straps)).toEqual(mils(33, 43, 54, 68, 97));
  });

  // Cold-formed steel framing: 20, 18, 16, 14 and 12 gauge are 33, 43, 54, 68 and 97 mil.
  test('straps are offered in the thicknesses that framing steel is made in', () => {
    const strap = [...content.dataSheets.values()]
      .map(({ numbers }) => numbers.get('strap-thickness' as NumberId))
      .find((number) => number !== undefined);
    expect(strap?.entry).toEqual(straps);
  });

  test.each([
    [7, 1, 10],
    [7, -1, 4],
    [8, 1, 10],
    [8, -1, 7],
    [4, -1, 4],
    [13, 1, 13],
    [14, 1, 13],
    [14, -1, 13],
  ] as const)('in a range, from %d in the next towards %d is %d', (from, direction, to) => {
    expect(nudged(range, inches(from), direction)).toEqual(inches(to));
  });

  test.each([
    [54, 1, 68],
    [54, -1, 43],
    [50, 1, 54],
    [50, -1, 43],
    [33, -1, 33],
    [97, 1, 97],
    [120, -1, 97],
  ] as const)('in a list, from %d mil the next towards %d is %d', (from, direction, to) => {
    expect([nudged(straps, quantity(from, 'mil'), direction)]).toEqual(mils(to));
  });

  test('a range takes what lies between its steps, and its ends', () => {
    const taken = [4, 5, 14, 3, 15].map((value) => isSettable(range, inches(value)));
    expect(taken).toEqual([true, true, true, false, false]);
  });

  test('a list takes nothing but its values, in whatever unit', () => {
    const taken = mils(33, 54, 50, 97, 100).map((value) => isSettable(straps, value));
    expect(taken).toEqual([true, true, false, true, false]);
    expect(isSettable(straps, quantity(rational(54, 1000), 'in'))).toBe(true);
  });

  test('the limits of a range are its ends, of a list its smallest and largest value', () => {
    expect(limitsOf(range)).toMatchObject({ from: inches(4), to: inches(14) });
    const [from, to] = mils(33, 97);
    expect(limitsOf(straps)).toEqual({ from, to });
  });

  test('how far off a value is is measured against the farthest that can be set', () => {
    const rule = { kind: 'at-least', value: quantity(53, 'mil') } as const;
    const degrees = mils(53, 43, 33, 23).map((value) => judge(rule, value, straps).degree);
    expect(degrees).toEqual([rational(0), rational(1, 2), rational(1), rational(1)]);
  });
});

describe('laws', () => {
  const eighths = fc.integer({ min: 1, max: 40 }).map((n) => quantity(rational(n, 8), 'in'));
  const entries: fc.Arbitrary<Entry> = fc.oneof(
    fc
      .tuple(eighths, eighths, eighths)
      .map(([from, more, by]) => ({ kind: 'range' as const, from, to: add(from, more), by })),
    fc
      .uniqueArray(fc.integer({ min: 1, max: 80 }), { minLength: 2, maxLength: 9 })
      .map((sizes) => ({
        kind: 'one-of' as const,
        values: sizes.toSorted((a, b) => a - b).map((n) => quantity(rational(n, 8), 'in')),
      })),
  );

  test('every choice can be set, and choices rise', () => {
    fc.assert(
      fc.property(entries, (entry) => {
        const choices = choicesOf(entry);
        expect(choices.every((choice) => isSettable(entry, choice))).toBe(true);
        choices.slice(1).forEach((choice, place) => {
          expect(compare(choices[place]!, choice)).toBeLessThan(0);
        });
      }),
    );
  });

  test('from the lowest limit, going up passes every choice and ends at the last', () => {
    fc.assert(
      fc.property(entries, (entry) => {
        const choices = choicesOf(entry);
        const passed = [limitsOf(entry).from];
        for (const _ of choices.slice(1)) passed.push(nudged(entry, passed.at(-1)!, 1));
        expect(passed).toEqual(choices);
        expect(nudged(entry, passed.at(-1)!, 1)).toEqual(choices.at(-1));
      }),
    );
  });
});
