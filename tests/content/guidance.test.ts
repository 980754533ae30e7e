import { describe, expect, it } from 'vitest';
import { afterHelp, hintAt, missingBefore, readySteps, rungs } from '#engine/marking/guidance.ts';
import { stretchAround } from '#engine/marking/stretch.ts';
import { isCorrectOrder } from '#engine/method/partial-order.ts';
import { walls } from './walls.ts';

describe('guidance', () => {
  it.each(walls)(
    'always finds a step that may come next, and why others may not: $name',
    ({ sequence }) => {
      const done = new Set<number>();
      while (done.size < sequence.steps.length) {
        const ready = readySteps(sequence, done);
        const waiting = sequence.steps.flatMap((_, step) =>
          done.has(step) || ready.includes(step) ? [] : [step],
        );
        expect(ready.length).toBeGreaterThan(0);
        expect(waiting.every((step) => missingBefore(sequence, step, done).length > 0)).toBe(true);
        done.add(ready.at(-1)!);
      }
    },
  );

  it('climbs from the reason to the step itself, every rung with words', () => {
    const { sequence } = walls[0]!;
    for (const step of sequence.steps.keys()) {
      for (const rung of rungs) {
        expect(hintAt(sequence, step, rung).every(({ en, es }) => en !== '' && es !== '')).toBe(
          true,
        );
        expect(hintAt(sequence, step, rung).length).toBeGreaterThan(0);
      }
    }
  });

  it('takes what help costs off a score, to nothing at worst', () => {
    expect(afterHelp(100, [])).toBe(100);
    expect(afterHelp(98.3, ['reason', 'key-point', 'step', 'refusal'])).toBe(93.8);
    expect(afterHelp(1, ['step'])).toBe(0);
  });
});

describe('the stretch to practise again', () => {
  it('reaches from the step before the first one missed to the one after the last', () => {
    const order = ['a', 'b', 'c', 'd', 'e', 'f'] as never[];
    expect(stretchAround(order, new Set(['c', 'd']))).toEqual({
      standing: ['a'],
      practised: ['b', 'c', 'd', 'e'],
      following: ['f'],
    });
    expect(stretchAround(order, new Set(['a']))).toMatchObject({ practised: ['a', 'b'] });
    expect(stretchAround(order, new Set()).practised).toEqual([]);
  });

  it.each(walls)('splits a correct order into three that are one again: $name', ({ sequence }) => {
    const order = sequence.steps.map(({ id }) => id);
    const missed = new Set<string>([order[3]!, order[7]!]);
    const { standing, practised, following } = stretchAround(order, missed);
    const whole = [...standing, ...practised, ...following].map((id) => order.indexOf(id));
    expect(isCorrectOrder(sequence.order, whole)).toBe(true);
  });
});
