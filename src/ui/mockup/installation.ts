import { createActor, SimulatedClock } from 'xstate';
import { type installMachine, placing, type StepState } from '#engine/method/install-machine.ts';
import { type PartialOrder, partialOrder } from '#engine/method/partial-order.ts';
import type { Sequence } from '#engine/method/sequence.ts';

/** The machine of one wall, running on a clock that only waiting moves. */
export type Installation = {
  readonly minute: () => number;
  readonly stateOf: (step: string) => StepState | undefined;
  /** Whether it was taken: a step that may not come yet changes nothing. */
  readonly place: (step: string) => boolean;
  readonly wait: (minutes: number) => void;
};

const minuteInMs = 60_000;

export function installation(machine: ReturnType<typeof installMachine>): Installation {
  const clock = new SimulatedClock();
  const actor = createActor(machine, { clock }).start();
  const stateOf = (step: string): StepState | undefined =>
    (actor.getSnapshot().value as Readonly<Record<string, StepState>>)[step];
  return {
    minute: () => clock.now() / minuteInMs,
    stateOf,
    place: (step) => {
      if (stateOf(step) !== 'ready') return false;
      actor.send(placing(step));
      return true;
    },
    wait: (minutes) => clock.increment(minutes * minuteInMs),
  };
}

/** The same wall where nothing is refused: each step may come at any time, and dries all the same. */
export function unbound(sequence: Sequence): Sequence {
  const order = partialOrder(sequence.steps.length, []) as { readonly value: PartialOrder };
  return { ...sequence, constraints: [], order: order.value };
}
