import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quantity } from '#engine/measure/conversion.ts';
import { rational, zero } from '#engine/measure/rational.ts';
import { partResult, sumsBy, type Mark, type PartResult } from '#engine/exam/score.ts';

const mark = (item: string, earned: number, possible = 1, parts = 1): Mark => ({
  item,
  earned: rational(earned, parts),
  possible: rational(possible),
});

const passMark = quantity(75, '%');

function resultOf(marks: readonly Mark[], retired: readonly string[] = []): PartResult {
  const result = partResult(marks, passMark, new Set(retired));
  if (!result.ok) throw new Error(result.error.map(({ code }) => code).join(', '));
  return result.value;
}

const faultsOf = (...marks: readonly Mark[]) => {
  const result = partResult(marks, passMark);
  return result.ok ? [] : result.error;
};

describe('truth', () => {
  test('just the pass mark passes, and a thousandth less does not', () => {
    const three = [mark('a', 1), mark('b', 1), mark('c', 1), mark('d', 0)];
    expect(resultOf(three).outcome).toBe('passed');
    const less = [mark('a', 999, 1, 1000), mark('b', 1), mark('c', 1), mark('d', 0)];
    expect(resultOf(less).outcome).toBe('failed');
  });

  test('three thirds are one whole', () => {
    const thirds = ['a', 'b', 'c'].map((item) => mark(item, 1, 1, 3));
    expect(resultOf(thirds).earned.equals(1n)).toBe(true);
  });

  test('a retired question counts neither for nor against', () => {
    const marks = [mark('a', 1), mark('b', 1), mark('c', 1), mark('d', 0), mark('e', 0)];
    expect(resultOf(marks).outcome).toBe('failed');
    const { share, outcome, lines } = resultOf(marks, ['e']);
    expect(share?.equals(rational(3, 4))).toBe(true);
    expect(outcome).toBe('passed');
    expect(lines.map(({ isCounted }) => isCounted)).toEqual([true, true, true, true, false]);
    expect(resultOf(marks, ['a']).share?.equals(rational(1, 2))).toBe(true);
  });

  test('where every question was retired nothing is said', () => {
    const { share, outcome } = resultOf([mark('a', 1)], ['a']);
    expect([share, outcome]).toEqual([undefined, 'nothing-to-count']);
  });

  test('marks that cannot be are told by item, all at once', () => {
    expect(
      faultsOf(mark('a', 2), mark('b', -1), mark('c', 0, 0), mark('d', 1), mark('d', 1)),
    ).toEqual([
      { code: 'MARK_OUT_OF_RANGE', item: 'a' },
      { code: 'MARK_OUT_OF_RANGE', item: 'b' },
      { code: 'MARK_OUT_OF_RANGE', item: 'c' },
      { code: 'MARKED_TWICE', item: 'd' },
    ]);
  });
});

describe('laws', () => {
  const anyMarks = fc
    .array(
      fc
        .record({
          possible: fc.integer({ min: 1, max: 5 }),
          part: fc.nat(12),
          isRetired: fc.boolean(),
        })
        .map(({ possible, part, isRetired }) => ({
          earned: rational(possible * part, 12),
          possible: rational(possible),
          isRetired,
        })),
      { minLength: 1, maxLength: 30 },
    )
    .map((all) => all.map((one, index) => ({ item: `q${index}`, ...one })));

  const retiredIn = (marks: readonly { item: string; isRetired: boolean }[]): readonly string[] =>
    marks.filter(({ isRetired }) => isRetired).map(({ item }) => item);

  test('groups sum to the whole', () => {
    fc.assert(
      fc.property(anyMarks, (marks) => {
        const result = resultOf(marks, retiredIn(marks));
        const groups = [...sumsBy(result, (item) => Number(item.slice(1)) % 4).values()];
        expect(
          groups.reduce((sum, { earned }) => sum.add(earned), zero).equals(result.earned),
        ).toBe(true);
        expect(
          groups.reduce((sum, { possible }) => sum.add(possible), zero).equals(result.possible),
        ).toBe(true);
      }),
    );
  });

  test('retiring a question is as if it had never been asked', () => {
    fc.assert(
      fc.property(anyMarks, (marks) => {
        const kept = marks.filter(({ isRetired }) => !isRetired);
        const [with_, without] = [resultOf(marks, retiredIn(marks)), resultOf(kept)];
        expect(with_.earned.equals(without.earned)).toBe(true);
        expect(with_.outcome).toBe(without.outcome);
      }),
    );
  });

  test('a better mark never turns a pass into a fail', () => {
    fc.assert(
      fc.property(anyMarks, fc.nat(), (marks, which) => {
        const better = marks.map((one, index) =>
          index === which % marks.length ? { ...one, earned: one.possible } : one,
        );
        const outcomes = [resultOf(marks).outcome, resultOf(better).outcome];
        expect(outcomes).not.toEqual(['passed', 'failed']);
      }),
    );
  });
});
