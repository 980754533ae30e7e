import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { accept } from '#engine/exam/accept.ts';
import {
  applied,
  deadlineOf,
  isOver,
  newSitting,
  sittingAfter,
  type Sitting,
} from '#engine/exam/sitting.ts';
import type { Answer } from '#engine/exam/sitting-event.ts';
import { milliseconds } from '#engine/exam/stretches.ts';
import { anySteps, minute, plan, played, type Step } from './small-sitting.ts';

const answersIn = ({ log }: Sitting): readonly Answer[] =>
  log.flatMap((event) => (event.kind === 'answered' ? [event.answer] : []));

describe('laws', () => {
  test('every answer that was taken is in the log as given, once', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        const { sitting, met } = played(steps);
        const taken = steps.flatMap(([, happening], index) =>
          happening.kind === 'answered' && ['taken', 'older'].includes(met[index]!)
            ? [happening.answer]
            : [],
        );
        expect(answersIn(sitting)).toEqual(taken);
        expect([...sitting.given.values()]).toEqual(taken);
        expect(new Set(taken.map(({ id }) => id)).size).toBe(taken.length);
      }),
      { numRuns: 500 },
    );
  });

  test('of each question the last answer by sequence counts, and of two alike the later in the log', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        const { sitting } = played(steps);
        for (const item of plan.items) {
          const given = answersIn(sitting).filter((answer) => answer.item === item);
          const best = Math.max(...given.map(({ sequence }) => sequence));
          expect(sitting.counts.get(item)).toEqual(
            given.findLast(({ sequence }) => sequence === best),
          );
        }
      }),
      { numRuns: 500 },
    );
  });

  test('folding the log gives the sitting, and a part of it and then the rest gives the same', () => {
    fc.assert(
      fc.property(anySteps, fc.nat(), (steps, cut) => {
        const { sitting } = played(steps);
        expect(sittingAfter(plan, sitting.log)).toEqual(sitting);
        expect(sittingAfter(plan, sitting.log)).toEqual(sittingAfter(plan, sitting.log));
        const at = sitting.log.length > 0 ? cut % (sitting.log.length + 1) : 0;
        const before = sittingAfter(plan, sitting.log.slice(0, at));
        expect(sitting.log.slice(at).reduce(applied, before)).toEqual(sitting);
      }),
    );
  });

  test('what happens next leaves a sitting that is held as it was', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        const { log } = played(steps).sitting;
        const held = log.map((_, count) => sittingAfter(plan, log.slice(0, count)));
        held.forEach((sitting, count) => {
          applied(sitting, log[count]!);
          expect(sitting).toEqual(sittingAfter(plan, log.slice(0, count)));
        });
      }),
      { numRuns: 50 },
    );
  });

  test('a server that stopped goes on from the log as if it had not', () => {
    fc.assert(
      fc.property(anySteps, fc.nat(), (steps, cut) => {
        const at = cut % (steps.length + 1);
        const [before, after] = [steps.slice(0, at), steps.slice(at)];
        let sitting = sittingAfter(plan, played(before).sitting.log);
        for (const [minutes, happening] of after) {
          const taken = accept(sitting, happening, minutes * minute);
          if (taken.ok) sitting = taken.value.sitting;
        }
        expect(sitting).toEqual(played(steps).sitting);
      }),
    );
  });

  test('the device clock changes nothing but what is written down of it', () => {
    const without = (steps: readonly Step[]): readonly Step[] =>
      steps.map(([minutes, happening]): Step => {
        if (happening.kind !== 'answered') return [minutes, happening];
        const { clientTime: _, ...answer } = happening.answer;
        return [minutes, { ...happening, answer }];
      });
    fc.assert(
      fc.property(anySteps, (steps) => {
        const [told, untold] = [played(steps), played(without(steps))];
        expect(told.met).toEqual(untold.met);
        expect(deadlineOf(told.sitting)).toBe(deadlineOf(untold.sitting));
        expect([...told.sitting.counts.values()].map(({ id }) => id)).toEqual(
          [...untold.sitting.counts.values()].map(({ id }) => id),
        );
      }),
    );
  });

  test('sending everything twice changes no answer, and takes none that was not taken', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        const answers = steps.filter(([, { kind }]) => kind === 'answered');
        const once = played(steps).sitting;
        let twice = once;
        for (const [minutes, happening] of answers) {
          const isKnown = happening.kind === 'answered' && once.given.has(happening.answer.id);
          const again = accept(twice, happening, minutes * minute);
          if (!isKnown || !again.ok) continue;
          expect(again.value.as).toBe('double');
          twice = again.value.sitting;
        }
        expect(twice).toBe(once);
      }),
    );
  });

  test('no deadline ever comes nearer, and the log is in order of time', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        const { log } = played(steps).sitting;
        let sitting = newSitting(plan);
        for (const event of log) {
          const next = applied(sitting, event);
          if (sitting.opened) expect(deadlineOf(next)).toBeGreaterThanOrEqual(deadlineOf(sitting)!);
          expect(event.at).toBeGreaterThanOrEqual(sitting.log.at(-1)?.at ?? event.at);
          sitting = next;
        }
      }),
    );
  });

  test('when it is over no answer is taken, and before it is every new one is', () => {
    fc.assert(
      fc.property(anySteps, fc.integer({ min: 0, max: 200 }), (steps, minutes) => {
        const { sitting } = played(steps);
        const now = Math.max(minutes * minute, sitting.log.at(-1)?.at ?? 0);
        const fresh = { id: 'fresh', sequence: 1, tab: 'c', item: 'q1', value: 'yes' };
        const taken = accept(sitting, { kind: 'answered', sitting: plan.id, answer: fresh }, now);
        const isOpen = sitting.phase !== 'waiting' && !isOver(sitting, now);
        expect(taken.ok).toBe(isOpen);
      }),
    );
  });

  test('stretches together are as long as the minutes that any of them covers', () => {
    const stretch = fc
      .tuple(fc.nat(40), fc.integer({ min: 1, max: 20 }))
      .map(([from, long]) => ({ from, to: from + long }));
    fc.assert(
      fc.property(fc.array(stretch, { maxLength: 8 }), (stretches) => {
        const covered = Array.from({ length: 61 }, (_, at) => at).filter((at) =>
          stretches.some(({ from, to }) => from <= at && at < to),
        );
        expect(milliseconds(stretches)).toBe(covered.length);
      }),
    );
  });
});
