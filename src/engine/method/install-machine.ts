/**
 * The state machine of one installation. Every step is a region of its own,
 * blocked -> ready -> [curing ->] done, and a region opens when the regions of the steps that it
 * covers in the partial order are done. So the orders that the machine accepts are exactly the
 * linear extensions of the order. Drying is a delayed transition: whoever runs the machine gives it
 * a clock.
 */
import { and, createMachine, stateIn } from 'xstate';
import { approximate } from '#engine/measure/rational.ts';
import { covers } from './partial-order.ts';
import type { Sequence, SequenceStep } from './sequence.ts';

export const stepStates = ['blocked', 'ready', 'curing', 'done'] as const;
export type StepState = (typeof stepStates)[number];

export type PlaceEvent = { readonly type: `place.${string}` };

export const placing = (stepId: string): PlaceEvent => ({ type: `place.${stepId}` });

/** Milliseconds, the unit of a machine's clock. */
export const dryingDelay = (step: SequenceStep): number =>
  step.dries ? approximate(step.dries.least.value.mul(1000n)) : 0;

export function installMachine(sequence: Sequence) {
  const pairs = covers(sequence.order);
  const regions = sequence.steps.map((step, place) => {
    const before = pairs.filter(([, later]) => later === place);
    const ids = before.map(([earlier]) => sequence.steps[earlier]!.id);
    return [step.id, region(step, ids)] as const;
  });
  return createMachine({
    id: 'install',
    types: {} as { events: PlaceEvent },
    type: 'parallel',
    states: Object.fromEntries(regions),
  });
}

function region(step: SequenceStep, before: readonly string[]) {
  const open = and(before.map((earlier) => stateIn({ [earlier]: 'done' })));
  return {
    initial: 'blocked',
    states: {
      blocked: { always: { guard: open, target: 'ready' } },
      ready: { on: { [placing(step.id).type]: step.dries ? 'curing' : 'done' } },
      ...(step.dries ? { curing: { after: { [dryingDelay(step)]: 'done' } } } : {}),
      done: { type: 'final' as const },
    },
  };
}
