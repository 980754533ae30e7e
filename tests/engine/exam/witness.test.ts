import { describe, expect, test } from 'vitest';
import { quantity } from '#engine/measure/conversion.ts';
import { rational } from '#engine/measure/rational.ts';
import { judgedPoints, type Observation } from '#engine/exam/judged-points.ts';
import { isMeasured, witnessPoints } from '#engine/exam/witness.ts';
import type { NumberId } from '#engine/method/method.ts';
import type { Weather } from '#engine/method/site.ts';
import { judge } from '#engine/method/rule.ts';
import { walls } from '../../content/walls.ts';
import { right, wrong } from './watched.ts';

const wall = (name: string) => walls.find((each) => each.name === name)!.sequence;
const straight = wall(
  'base-of-wall backing=steel-stud edge=held-back joint=seam corner=none weather=normal',
);
const points = witnessPoints(straight);

const faultsOf = (...seen: readonly Observation[]) => {
  const judged = judgedPoints(points, seen);
  return judged.ok ? [] : judged.error;
};

function judgedAs(point: string, value: ReturnType<typeof quantity>) {
  const judged = judgedPoints(points, [{ point, kind: 'measured', value }]);
  if (!judged.ok) throw new Error(judged.error.map(({ code }) => code).join(', '));
  return judged.value.find((each) => each.point.id === point)!;
}

describe('truth', () => {
  // BIA Technical Note 28B (December 2005), summary list: 8 in or more up the backing.
  test('a turn-up of 8 in is right, and one of 7 15/16 in is not', () => {
    const at = 'snap-line/setting/turn-up';
    const [right, short] = [quantity(8, 'in'), quantity(rational(127, 16), 'in')].map((value) =>
      judgedAs(at, value),
    );
    expect([right!.right, right!.judgement?.degree.equals(0n)]).toEqual([true, true]);
    expect([short!.right, short!.judgement?.degree.gt(0n)]).toEqual([false, true]);
  });

  test('what was not seen is neither right nor wrong', () => {
    const judged = judgedPoints(points, []);
    expect(judged.ok && judged.value.every((each) => each.right === undefined)).toBe(true);
  });

  test('a measured point is not judged by eye, and a watched one not measured', () => {
    const measured = points.find(isMeasured)!;
    const watched = points.find((point) => !isMeasured(point))!;
    expect(faultsOf({ point: measured.id, kind: 'watched', right: true })).toEqual([
      { code: 'NOT_MEASURED', point: measured.id },
    ]);
    expect(faultsOf({ point: watched.id, kind: 'measured', value: quantity(8, 'in') })).toEqual([
      { code: 'NOT_A_MEASURE', point: watched.id },
    ]);
  });

  test('every other fault is told by its point', () => {
    const turnUp = 'snap-line/setting/turn-up';
    const value = quantity(8, 'in');
    expect(
      faultsOf(
        { point: 'paint/done', kind: 'watched', right: true },
        { point: turnUp, kind: 'measured', value: quantity(8, 'min') },
        { point: turnUp, kind: 'measured', value },
        { point: turnUp, kind: 'measured', value },
      ),
    ).toEqual([
      { code: 'UNKNOWN_POINT', point: 'paint/done' },
      { code: 'WRONG_DIMENSION', point: turnUp },
      { code: 'SEEN_TWICE', point: turnUp },
    ]);
  });

  test('a colder wall, as measured, dries longer than the site says', () => {
    const cold: Weather = new Map([
      ...straight.weather,
      ['air-temperature', quantity(45, '°F')],
      ['surface-temperature', quantity(45, '°F')],
    ]);
    const waits = (weather?: Weather) =>
      witnessPoints(straight, weather).filter(({ kind }) => kind === 'wait');
    const [asStated, measured] = [waits(), waits(cold)];
    expect(asStated.length).toBeGreaterThan(0);
    asStated.forEach((point, index) => {
      const colder = measured[index]!;
      expect(colder.id).toBe(point.id);
      if (!isMeasured(point) || !isMeasured(colder)) throw new Error(point.id);
      // Half way between 6 min at 40 °F and 4 min at 50 °F, in dry air.
      expect(judge(colder.rule, quantity(5, 'min')).within).toBe(true);
      expect(judge(colder.rule, quantity(299, 's')).within).toBe(false);
      expect(judge(point.rule, quantity(2, 'min')).within).toBe(true);
    });
  });

  test('a setting that depends on it is judged by what was measured', () => {
    const dries = straight.dataSheet.numbers.get('touch-dry-time' as NumberId)!;
    const asks = straight.steps.find((step) => step.asks.length > 0)!.asks.slice(0, 1);
    const bound = asks.map((ask) => ({ ...ask, sheetNumber: dries }));
    const sequence = {
      ...straight,
      steps: [{ ...straight.steps[0]!, asks: bound }],
      constraints: [],
    };
    const weather: Weather = new Map([
      ...straight.weather,
      ['surface-temperature', quantity(40, '°F')],
    ]);
    const point = witnessPoints(sequence, weather).find(({ kind }) => kind === 'measure')!;
    if (!isMeasured(point)) throw new Error(point.id);
    expect(judge(point.rule, quantity(6, 'min')).within).toBe(true);
    expect(judge(point.rule, quantity(359, 's')).within).toBe(false);
  });
});

describe('laws', () => {
  test('a key point is never critical, and whatever else the method calls critical is', () => {
    for (const { sequence } of walls) {
      const all = witnessPoints(sequence);
      const worst = all.filter(({ severity }) => severity === 'critical');
      expect(worst.some(({ kind }) => kind === 'key-point')).toBe(false);
      const { steps, constraints } = sequence;
      const critical = [
        ...steps,
        ...constraints,
        ...steps.flatMap(({ asks, dries }) => [...asks, ...(dries ? [dries] : [])]),
      ].filter(({ severity }) => severity === 'critical');
      expect(worst).toHaveLength(critical.length);
    }
  });

  test('on every shipped wall each id is there once, and nothing of the sequence is forgotten', () => {
    for (const { sequence } of walls) {
      const all = witnessPoints(sequence);
      expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
      const count = (kind: string): number => all.filter((point) => point.kind === kind).length;
      const { steps, constraints } = sequence;
      expect(count('done')).toBe(steps.length);
      expect(count('key-point')).toBe(steps.flatMap(({ keyPoints }) => keyPoints).length);
      expect(count('order')).toBe(constraints.length);
      expect(count('measure')).toBe(steps.flatMap(({ asks }) => asks).length);
      expect(count('wait')).toBe(steps.filter(({ dries }) => dries).length);
    }
  });

  test('under the weather that the site states, measured points are as the sequence has them', () => {
    for (const { sequence } of walls) {
      const changes = sequence.steps.some((step) => step.changes.size > 0);
      if (!changes)
        expect(witnessPoints(sequence, sequence.weather)).toEqual(witnessPoints(sequence));
    }
  });

  test('on every shipped wall the low end of a rule is right and what lies below it is not', () => {
    for (const { sequence } of walls) {
      const all = witnessPoints(sequence).filter(
        (point) => !isMeasured(point) || point.rule.kind !== 'at-most',
      );
      for (const [observe, expected] of [
        [right, true],
        [wrong, false],
      ] as const) {
        const judged = judgedPoints(all, all.map(observe));
        if (!judged.ok) throw new Error(judged.error.map(({ code }) => code).join(', '));
        expect(judged.value.filter((each) => each.right !== expected)).toEqual([]);
      }
    }
  });
});
