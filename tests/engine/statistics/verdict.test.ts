import { describe, expect, test } from 'vitest';
import { randomFrom } from '#engine/random.ts';
import { fewest, ifEnough } from '#engine/statistics/enough.ts';
import type { Group } from '#engine/statistics/group-strata.ts';
import { itemVerdicts } from '#engine/statistics/item-verdict.ts';
import { kr20Interval } from '#engine/statistics/kr20-interval.ts';
import type { Responses } from '#engine/statistics/responses.ts';
import { drawAbilities, simulateResponses } from '#engine/statistics/simulate-responses.ts';
import { itemCurves, testVerdict } from '#engine/statistics/test-verdict.ts';
import { wilson } from '#engine/statistics/wilson.ts';
import { answered, lsat6 } from './lsat6.ts';

const z = 1.959963984540054;

describe('how many answers are enough', () => {
  /** The smallest number from which a promise holds. */
  const firstOf = (holds: (n: number) => boolean): number => {
    let n = 4;
    while (!holds(n)) n += 1;
    return n;
  };

  test('for a share, where its interval reaches 0.2 to either side at most', () => {
    const reach = (n: number): number => {
      const reaches = Array.from({ length: n + 1 }, (_, hits) => {
        const { low, high } = wilson(hits, n);
        return (high - low) / 2;
      });
      return Math.max(...reaches);
    };
    expect(firstOf((n) => reach(n) <= 0.2)).toBe(fewest.proportion);
  });

  test('for a correlation, where 0.3 is told from 0', () => {
    const holds = (n: number): boolean => Math.atanh(0.3) > z / Math.sqrt(n - 3);
    expect(firstOf(holds)).toBe(fewest.correlation);
  });

  test('for groups, where a large difference is told from none', () => {
    expect(firstOf((n) => 1.5 / 2.35 > z * Math.sqrt(8 / n))).toBe(fewest.group);
  });

  test('for KR-20, where 0.7 is told from 0.5 on ten items', () => {
    expect(firstOf((n) => kr20Interval(0.7, 10, n).low > 0.5)).toBe(fewest.reliability);
  });

  test('for kappa, where it is known to a quarter', () => {
    const reach = (n: number): number => (z * Math.sqrt((0.8 * 0.2) / n)) / 0.5;
    expect(firstOf((n) => reach(n) <= 0.25)).toBe(fewest.cases);
  });

  test('one fewer gives no figure, and says how many are missing', () => {
    expect(ifEnough(19, 20, () => expect.fail('computed'))).toEqual({
      enough: false,
      have: 19,
      need: 20,
    });
    expect(ifEnough(20, 20, () => 7)).toEqual({ enough: true, value: 7 });
  });
});

/** Twelve items: 0 easy, 1 hard, 2 turned around, the others sound; groups alike but for item 3. */
function made(persons: number): { responses: Responses; groups: readonly Group[] } {
  const random = randomFrom(`verdict/${persons}`);
  const curves = Array.from({ length: 12 }, (_, item) => ({
    slope: 1.2,
    intercept: (item - 6) / 4,
  }))
    .with(0, { slope: 1, intercept: 5 })
    .with(1, { slope: 1, intercept: -3 })
    .with(2, { slope: -1.2, intercept: 0 })
    .with(3, { slope: 1.2, intercept: 0.5 });
  const unlike = curves.with(3, { slope: 1.2, intercept: -0.75 });
  const halves = [curves, unlike].map((own) =>
    simulateResponses(random, own, drawAbilities(random, persons / 2)),
  );
  return {
    responses: {
      persons,
      items: 12,
      scores: Uint8Array.from(halves.flatMap(({ scores }) => [...scores])),
    },
    groups: Array.from({ length: persons }, (_, at) => (at < persons / 2 ? 'reference' : 'focal')),
  };
}

describe('what is said of items', () => {
  test('what was made wrong is named, surely, and the others have nothing against them', () => {
    const { responses, groups } = made(1000);
    const found = itemVerdicts(responses, groups);
    expect(found.map(({ flags }) => flags.map(({ kind }) => kind))).toEqual([
      ['too-easy'],
      ['too-hard'],
      ['pulls-wrong-way'],
      ['differs-between-groups'],
      ...Array.from({ length: 8 }, () => []),
    ]);
    expect(found.map(({ standing }) => standing).slice(2, 5)).toEqual([
      'look-at-it',
      'look-at-it',
      'nothing-against-it',
    ]);
    expect(found[0]!.flags[0]).toMatchObject({ isSure: true });
    expect(found[2]!.flags[0]).toMatchObject({ isSure: true });
    expect(found[3]!.flags[0]).toMatchObject({ favours: 'reference', size: 'large' });
  });

  test('with few answers there is no figure and no flag', () => {
    const { responses, groups } = made(18);
    for (const { standing, flags, answers, ...rest } of itemVerdicts(responses, groups)) {
      expect([standing, flags, answers]).toEqual(['too-few-answers', [], 18]);
      expect(rest).toMatchObject({
        proportion: { enough: false, have: 18, need: 21 },
        correlation: { enough: false, have: 18, need: 44 },
        difference: { enough: false, have: 9, need: 76 },
      });
    }
  });

  test('with some more a share is told, and what takes more is still not', () => {
    const [easy] = itemVerdicts(made(30).responses);
    expect(easy).toMatchObject({
      proportion: { enough: true },
      correlation: { enough: false },
      difference: undefined,
    });
  });

  test('a flag that the interval does not bear out is not sure', () => {
    const rows = Array.from({ length: 21 }, (_, at) => (at < 5 ? '1' : '0') + (at % 2));
    expect(itemVerdicts(answered(rows))[0]!.flags).toEqual([{ kind: 'too-hard', isSure: false }]);
  });

  test('answers all alike have no correlation, and are not called sound for it', () => {
    const rows = Array.from({ length: 50 }, (_, at) => `1${at % 2}${at % 3 ? 1 : 0}`);
    expect(itemVerdicts(answered(rows))[0]).toMatchObject({
      correlation: { value: 'alike' },
      flags: [{ kind: 'too-easy', isSure: false }],
    });
  });
});

describe('what is said of a test', () => {
  test('LSAT 6 of five items does not tell people apart', () => {
    expect(testVerdict(lsat6)).toMatchObject({ standing: 'does-not-tell-people-apart' });
  });

  test('many sound items do, few persons leave it open, and fewer say nothing', () => {
    const of = (persons: number): Responses => {
      const random = randomFrom('test verdict');
      const curves = Array.from({ length: 24 }, (_, at) => ({
        slope: 1.2,
        intercept: at / 8 - 1.5,
      }));
      return simulateResponses(random, curves, drawAbilities(random, persons));
    };
    expect(testVerdict(of(400)).standing).toBe('tells-people-apart');
    expect(testVerdict(of(34))).toEqual({ standing: 'too-few-persons', have: 34, need: 35 });
    const alike = answered(Array.from({ length: 40 }, (_, at) => (at % 2 ? '10' : '01')));
    expect(testVerdict(alike)).toEqual({ standing: 'nothing-to-tell' });
    const open = answered(
      Array.from({ length: 36 }, (_, at) => `${at % 2}${at % 2}${at % 4 < 2 ? 1 : 0}`),
    );
    expect(testVerdict(open).standing).toBe('unsure');
  });

  test('curves are fitted only where there are persons enough', () => {
    expect(itemCurves(made(98).responses, 'slope-common')).toEqual({
      enough: false,
      have: 98,
      need: 100,
    });
    expect(itemCurves(lsat6, 'slope-each')).toMatchObject({
      enough: true,
      value: { value: { outcome: 'converged' } },
    });
  });
});
