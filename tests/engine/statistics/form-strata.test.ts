import { describe, expect, test } from 'vitest';
import { randomFrom, whole } from '#engine/random.ts';
import { abilityFor, formAt } from '#engine/statistics/form-precision.ts';
import { formStrata, personsIn } from '#engine/statistics/form-strata.ts';
import { groupDifference } from '#engine/statistics/group-difference.ts';
import { type Group, groupStrata } from '#engine/statistics/group-strata.ts';
import { absent, type Responses } from '#engine/statistics/responses.ts';
import { drawAbilities, simulateResponses } from '#engine/statistics/simulate-responses.ts';

const curves = Array.from({ length: 40 }, (_, item) => ({
  slope: 1,
  intercept: 1 - (item % 5) / 2,
}));
const persons = 900;

/** Everybody is asked 20 of 40; the first is harder for the second group, where that is asked for. */
function sat(harder: number) {
  const random = randomFrom(`forms ${harder}`);
  const abilities = drawAbilities(random, persons);
  const groups = Array.from({ length: persons }, (_, person): Group =>
    person % 2 === 0 ? 'reference' : 'focal',
  );
  const all = simulateResponses(random, curves, abilities);
  const hard = simulateResponses(
    random,
    curves.map((curve, item) =>
      item === 0 ? { ...curve, intercept: curve.intercept - harder } : curve,
    ),
    abilities,
  );
  const scores = all.scores.map((score, at) =>
    groups[Math.floor(at / curves.length)] === 'focal' ? hard.scores[at]! : score,
  );
  for (let person = 0; person < persons; person += 1) {
    const turn = whole(random, 0, 1);
    for (let item = 1; item < curves.length; item += 1) {
      if (item % 2 === turn) scores[person * curves.length + item] = absent;
    }
  }
  const responses: Responses = { ...all, scores };
  const lengths = Array.from({ length: persons }, (_, person) => {
    const row = scores.subarray(person * curves.length, (person + 1) * curves.length);
    return row.filter((score) => score !== absent).length;
  });
  return { responses, groups, lengths };
}

describe('laws', () => {
  test('where all were asked the same it is the usual comparison', () => {
    const random = randomFrom('same');
    const responses = simulateResponses(random, curves, drawAbilities(random, 80));
    const groups = Array.from({ length: 80 }, (_, person): Group =>
      person < 30 ? 'reference' : 'focal',
    );
    const lengths = new Array<number>(80).fill(curves.length);
    const strata = formStrata(responses, groups, lengths);
    expect(strata).toEqual(groupStrata(responses, groups).strata);
    expect(personsIn(strata[3]!)).toEqual({ reference: 30, focal: 50 });
  });

  test('with forms that differ it finds the question that is harder for one group, and no other', () => {
    const found = (harder: number) => {
      const { responses, groups, lengths } = sat(harder);
      return formStrata(responses, groups, lengths).map(groupDifference);
    };
    expect(found(1.5)[0]).toMatchObject({ size: 'large', favours: 'reference' });
    expect(found(0)[0]).toMatchObject({ size: 'none-to-speak-of' });
    const others = found(1.5).slice(1);
    expect(others.filter(({ size }) => size === 'large')).toEqual([]);
  });

  test('forms of another length, and people in neither group, are not compared', () => {
    const { responses, groups, lengths } = sat(0);
    const longest = Math.max(...lengths);
    const some = lengths.map((length, person) => (person < 10 ? length - 5 : length));
    const unknown = groups.map((group, person) => (person % 10 === 9 ? undefined : group));
    const all = formStrata(responses, groups, lengths).map(personsIn);
    const fewer = formStrata(responses, unknown, some).map(personsIn);
    expect(longest).toBeLessThanOrEqual(21);
    expect(fewer[0]!.focal).toBeLessThan(all[0]!.focal);
    expect(() => formStrata(responses, groups.slice(1), lengths)).toThrow(RangeError);
  });

  test('the ability at a number right is that at which it is expected', () => {
    const topics = [
      { count: 6, curves: curves.slice(0, 20) },
      { count: 4, curves: curves.slice(20) },
    ];
    for (const right of [2, 5, 8]) {
      expect(formAt(topics, abilityFor(topics, right)).right).toBeCloseTo(right, 6);
    }
    const { information, variance } = formAt(topics, 0);
    // With slopes of 1 an answer tells as much as it varies.
    expect(information).toBeCloseTo(variance, 12);
  });
});
