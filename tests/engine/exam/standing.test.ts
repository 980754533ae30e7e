import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addPeriod, type IsoDate } from '#engine/calendar.ts';
import type { SchemeId } from '#engine/exam/scheme.ts';
import { standingOf, type PartState, type Tried } from '#engine/exam/standing.ts';
import { day, id, scheme, tried } from './small-scheme.ts';

const stateOn = (today: string, ...tries: readonly Tried[]): PartState => {
  const standing = standingOf(scheme, { tried: tries, held: new Map() }, day(today));
  return standing.parts[0]!.state;
};

const knowledge = (on: string, result: Tried['result']): Tried => tried('knowledge', on, result);

describe('truth', () => {
  test('whoever tried nothing may take everything, three times', () => {
    const { parts, completeUntil } = standingOf(
      scheme,
      { tried: [], held: new Map() },
      day('2026-03-01'),
    );
    expect(parts.map(({ state }) => state)).toEqual([
      { kind: 'may-take', left: 3 },
      { kind: 'may-take', left: 3 },
    ]);
    expect(completeUntil).toBeUndefined();
  });

  test('after a failed try the next is two weeks later, on that very day', () => {
    const failed = knowledge('2026-03-01', 'failed');
    expect(stateOn('2026-03-14', failed)).toEqual({
      kind: 'must-wait',
      from: '2026-03-15',
      because: 'just-failed',
    });
    expect(stateOn('2026-03-15', failed)).toEqual({ kind: 'may-take', left: 2 });
  });

  test('after three tries in a year there is room when the first is a year old', () => {
    const tries = ['2026-01-31', '2026-03-01', '2026-04-01'].map((on) => knowledge(on, 'failed'));
    const wait = { kind: 'must-wait', from: '2027-01-31', because: 'too-many-tries' };
    expect(stateOn('2026-05-01', ...tries)).toEqual(wait);
    expect(stateOn('2027-01-30', ...tries)).toEqual(wait);
    expect(stateOn('2027-01-31', ...tries)).toEqual({ kind: 'may-take', left: 1 });
  });

  test('a try on the last of February is a year old on its last day too', () => {
    const tries = ['2024-02-29', '2024-04-01', '2024-05-01'].map((on) => knowledge(on, 'failed'));
    expect(stateOn('2024-06-01', ...tries)).toMatchObject({ from: '2025-02-28' });
  });

  test('what was voided is no try', () => {
    expect(stateOn('2026-03-02', knowledge('2026-03-01', 'void'))).toEqual({
      kind: 'may-take',
      left: 3,
    });
  });

  test('a pass counts for a year, its last day included, and is a try afterwards no more', () => {
    const passed = knowledge('2026-03-10', 'passed');
    const state = { kind: 'passed', on: '2026-03-10', until: '2027-03-10' };
    expect(stateOn('2026-03-10', passed)).toEqual(state);
    expect(stateOn('2027-03-10', passed)).toEqual(state);
    expect(stateOn('2027-03-11', passed)).toEqual({ kind: 'may-take', left: 3 });
  });

  test('what lies in the future has not happened', () => {
    expect(stateOn('2026-03-09', knowledge('2026-03-10', 'passed'))).toEqual({
      kind: 'may-take',
      left: 3,
    });
  });

  test('it is complete until the first part runs out', () => {
    const both = [knowledge('2026-03-10', 'passed'), tried('hand', '2026-05-02', 'passed')];
    const { completeUntil } = standingOf(
      scheme,
      { tried: both, held: new Map() },
      day('2026-06-01'),
    );
    expect(completeUntil).toBe('2027-03-10');
  });

  test('without a certificate that is required nothing may be taken, up to its last day it may', () => {
    const requires = ['first' as SchemeId];
    const on = (today: string) =>
      standingOf(
        { ...scheme, requires },
        { tried: [], held: new Map([[requires[0]!, day('2026-06-30')]]) },
        day(today),
      );
    expect(on('2026-06-30').lacks).toEqual([]);
    expect(on('2026-07-01').lacks).toEqual(['first']);
    expect(on('2026-07-01').parts.map(({ state }) => state.kind)).toEqual([
      'needs-certificate',
      'needs-certificate',
    ]);
  });
});

describe('laws', () => {
  const start = day('2026-01-01');
  const anyTries = fc.array(
    fc
      .record({
        after: fc.nat(700),
        result: fc.constantFrom<Tried['result']>('failed', 'failed', 'passed', 'void'),
      })
      .map(({ after, result }): Tried => ({
        part: id('knowledge'),
        on: addPeriod(start, { count: after, unit: 'days' }),
        result,
      })),
    { maxLength: 8 },
  );
  const anyDay = fc.nat(900).map((count): IsoDate => addPeriod(start, { count, unit: 'days' }));

  test('the day that is named is the first on which it may be taken', () => {
    fc.assert(
      fc.property(anyTries, anyDay, (tries, today) => {
        // Only what has happened by then, or the future would change the answer.
        const past = tries.filter(({ on }) => on <= today);
        const state = stateOn(today, ...past);
        if (state.kind !== 'must-wait') return;
        expect(state.from > today).toBe(true);
        expect(stateOn(state.from, ...past).kind).toBe('may-take');
        const eve = addPeriod(state.from, { count: 1, unit: 'days' }, -1);
        expect(stateOn(eve, ...past).kind).toBe('must-wait');
      }),
      { numRuns: 500 },
    );
  });

  test('the order in which tries are written down does not matter', () => {
    fc.assert(
      fc.property(anyTries, anyDay, (tries, today) => {
        expect(stateOn(today, ...tries)).toEqual(stateOn(today, ...tries.toReversed()));
      }),
    );
  });

  test('whoever may take a part has not had the tries that are allowed', () => {
    fc.assert(
      fc.property(anyTries, anyDay, (tries, today) => {
        const state = stateOn(today, ...tries);
        if (state.kind !== 'may-take') return;
        const counted = tries.filter(
          ({ on, result }) =>
            result !== 'void' && on <= today && addPeriod(on, scheme.tries.within) > today,
        );
        expect(state.left).toBe(scheme.tries.most - counted.length);
        expect(state.left).toBeGreaterThan(0);
      }),
    );
  });
});
