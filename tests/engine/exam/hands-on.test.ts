import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quantity } from '#engine/measure/conversion.ts';
import { rational, rationalText, zero } from '#engine/measure/rational.ts';
import type { StepId } from '#engine/method/method.ts';
import { handsOnResult } from '#engine/exam/hands-on-result.ts';
import type { Judged } from '#engine/exam/judged-points.ts';
import { judgedByTwo, jointOutcome } from '#engine/exam/two-examiners.ts';
import type { WatchPoint } from '#engine/exam/witness.ts';
import type { Severity } from '#engine/severity.ts';

const said = { en: 'said', es: 'dicho' };

const point = (name: string, severity: Severity): WatchPoint => ({
  kind: 'done',
  id: name,
  step: name as StepId,
  say: said,
  because: said,
  severity,
  hazards: [],
});

const judged = (name: string, severity: Severity, right: boolean | undefined): Judged => ({
  point: point(name, severity),
  right,
  measured: undefined,
  judgement: undefined,
});

const passMark = quantity(75, '%');
const asked = quantity(80, '%');
const of = (...all: readonly Judged[]) => handsOnResult(all, passMark);

describe('truth', () => {
  test('points weigh 1, 3 and 9, and just the pass mark passes', () => {
    const result = of(
      judged('a', 'critical', true),
      judged('b', 'major', false),
      judged('c', 'minor', true),
      judged('d', 'minor', true),
    );
    expect([result.earned, result.possible].map(rationalText)).toEqual(['11', '14']);
    expect(result.outcome).toBe('passed');
    const three = of(judged('a', 'major', true), judged('b', 'minor', false));
    expect([rationalText(three.earned), three.outcome]).toEqual(['3', 'passed']);
    expect(of(judged('a', 'minor', true), judged('b', 'minor', false)).outcome).toBe('failed');
  });

  test('one critical point that is wrong fails whatever the rest', () => {
    const minors = Array.from({ length: 99 }, (_, index) => judged(`m${index}`, 'major', true));
    const { outcome, wrong } = of(...minors, judged('bar', 'critical', false));
    expect([outcome, wrong.map(({ id }) => id)]).toEqual(['failed', ['bar']]);
  });

  test('a critical point that nobody saw leaves it open, another counts neither way', () => {
    expect(of(judged('a', 'critical', undefined), judged('b', 'minor', true)).outcome).toBe('open');
    const { outcome, possible, unseen } = of(
      judged('a', 'critical', true),
      judged('b', 'major', undefined),
    );
    expect([outcome, rationalText(possible), unseen.length]).toEqual(['passed', '9', 1]);
    expect(of().outcome).toBe('open');
  });

  test('two examiners are compared on what both saw', () => {
    const first = [true, true, false, undefined].map((right, index) =>
      judged(`p${index}`, 'minor', right),
    );
    const second = [true, false, false, true].map((right, index) =>
      judged(`p${index}`, 'minor', right),
    );
    expect(judgedByTwo(first, second)).toEqual({
      pairs: [
        [true, true],
        [true, false],
        [false, false],
      ],
      counts: [
        [1, 1],
        [0, 1],
      ],
      agreement: rational(2, 3),
    });
    expect(judgedByTwo([], []).agreement).toBeUndefined();
  });

  const pass = of(judged('a', 'major', true));
  const fail = of(judged('a', 'major', false));
  const open = of();
  const agreeing = (alike: number, pairs: number) => ({
    pairs: [],
    counts: [
      [0, 0],
      [0, 0],
    ] as const,
    agreement: pairs > 0 ? rational(alike, pairs) : undefined,
  });

  test.each([
    [pass, pass, 4, 5, 'passed'],
    [fail, fail, 5, 5, 'failed'],
    [pass, pass, 79, 100, 'to-be-settled'],
    [pass, fail, 5, 5, 'to-be-settled'],
    [pass, pass, 0, 0, 'to-be-settled'],
    [pass, open, 5, 5, 'open'],
  ])('two outcomes come together (%#)', (first, second, alike, pairs, outcome) => {
    expect(jointOutcome(first, second, agreeing(alike, pairs), asked)).toBe(outcome);
  });
});

describe('laws', () => {
  const anyJudged = fc
    .array(
      fc.tuple(
        fc.constantFrom<Severity>('minor', 'major', 'critical'),
        fc.constantFrom(true, true, false, undefined),
      ),
      { maxLength: 20 },
    )
    .map((all) => all.map(([severity, right], index) => judged(`p${index}`, severity, right)));

  test('every point is marked or unseen, and marks add up', () => {
    fc.assert(
      fc.property(anyJudged, (all) => {
        const { marks, unseen, wrong, earned, possible } = of(...all);
        expect(marks.length + unseen.length).toBe(all.length);
        expect(marks.reduce((sum, mark) => sum.add(mark.earned), zero).equals(earned)).toBe(true);
        const lost = wrong.length > 0;
        expect(earned.lt(possible)).toBe(lost);
      }),
    );
  });

  test('an examiner always agrees with themselves, and two do whoever is named first', () => {
    fc.assert(
      fc.property(anyJudged, anyJudged, (one, other) => {
        const alone = judgedByTwo(one, one);
        expect(alone.agreement?.equals(1n) ?? true).toBe(true);
        const [there, back] = [judgedByTwo(one, other), judgedByTwo(other, one)];
        expect(
          there.agreement?.equals(back.agreement ?? zero) ?? back.agreement === undefined,
        ).toBe(true);
        expect(there.counts[0][1]).toBe(back.counts[1][0]);
        expect(there.counts.flat().reduce((a, b) => a + b, 0)).toBe(there.pairs.length);
      }),
    );
  });
});
