import { describe, expect, it } from 'vitest';
import { instanceOf } from '#engine/takeoff/instance.ts';
import { mostProblems, worksheetOf } from '#engine/takeoff/worksheet.ts';
import { takeoff } from './shipped.ts';

const takeoffs = ['fasteners-one-bar', 'sheet-girth', 'dew-point'].map((id) => takeoff(id));

const sheet = (seed: string, count: number) => {
  const made = worksheetOf(takeoffs, seed, count);
  if (!made.ok) throw new Error(made.error.family);
  return made.value.map(({ seed, instance }) => `${instance.takeoff.family.id}/${seed}`);
};

describe('truth', () => {
  it('the same order gives the same sheet, another seed another', () => {
    expect(sheet('42', 9)).toEqual(sheet('42', 9));
    expect(sheet('42', 9)).not.toEqual(sheet('43', 9));
  });

  it('more problems of the same sheet begin with the same ones', () => {
    expect(sheet('42', 12).slice(0, 5)).toEqual(sheet('42', 5));
  });

  it('each problem opens with its own seed anywhere else', () => {
    const made = worksheetOf(takeoffs, '42', 3);
    if (!made.ok) throw new Error(made.error.family);
    for (const { seed, instance } of made.value) {
      const again = instanceOf(instance.takeoff, seed);
      expect(again.ok && again.value.givens).toEqual(instance.givens);
    }
  });

  it.each([0, mostProblems + 1, 1.5])('%s problems are refused', (count) => {
    expect(() => worksheetOf(takeoffs, '1', count)).toThrow(RangeError);
    expect(() => worksheetOf([], '1', 1)).toThrow(RangeError);
  });
});

describe('laws', () => {
  it('every family comes equally often, give or take one, and no problem twice', () => {
    for (const seed of ['1', '2', '3', '4', '5']) {
      const problems = sheet(seed, 20);
      const times = takeoffs.map(
        ({ family }) => problems.filter((problem) => problem.startsWith(family.id)).length,
      );
      expect(Math.max(...times) - Math.min(...times)).toBeLessThanOrEqual(1);
      expect(new Set(problems).size).toBe(problems.length);
    }
  });
});
