import { describe, expect, it } from 'vitest';
import { createActor, SimulatedClock } from 'xstate';
import { dryingDelay, installMachine, placing } from '#engine/method/install-machine.ts';
import { approximate } from '#engine/measure/rational.ts';
import { amountIn } from '#engine/measure/conversion.ts';
import { walls } from './walls.ts';

const wallOf = (site: Readonly<Record<string, string>>) =>
  walls.find(
    ({ sequence }) =>
      sequence.method.id === 'base-of-wall' &&
      Object.entries(site).every(([question, value]) => sequence.site[question] === value),
  )!.sequence;

/** Builds up to the step that dries and returns the minutes until it is dry, by the clock. */
function minutesUntilDry(site: Readonly<Record<string, string>>, drying: string): number {
  const sequence = wallOf(site);
  const clock = new SimulatedClock();
  const actor = createActor(installMachine(sequence), { clock }).start();
  const stateOf = (id: string) => (actor.getSnapshot().value as Record<string, string>)[id];
  for (const { id } of sequence.steps) {
    actor.send(placing(id));
    if (id === drying) break;
    clock.increment(24 * 3_600_000);
  }
  expect(stateOf(drying)).toBe('curing');
  let seconds = 0;
  while (stateOf(drying) === 'curing') {
    clock.increment(1000);
    seconds += 1;
  }
  return seconds / 60;
}

describe('drying', () => {
  it('takes 2 min at 70 °F, as the data sheet says, and longer on a cold morning', () => {
    expect(minutesUntilDry({ weather: 'normal' }, 'prime-wall')).toBe(2);
    expect(minutesUntilDry({ weather: 'cold' }, 'prime-wall')).toBeGreaterThan(4);
  });

  it('holds back what must wait, and nothing else', () => {
    const sequence = wallOf({ weather: 'normal' });
    const actor = createActor(installMachine(sequence), { clock: new SimulatedClock() }).start();
    for (const { id } of sequence.steps) {
      actor.send(placing(id));
      if (id === 'prime-wall') break;
    }
    expect(actor.getSnapshot().can(placing('tape-top-edge'))).toBe(false);
    expect(actor.getSnapshot().can(placing('prime-sheet'))).toBe(true);
  });

  it('has a delay that is the least time of the data sheet', () => {
    for (const { sequence } of walls) {
      for (const step of sequence.steps.filter(({ dries }) => dries)) {
        expect(dryingDelay(step)).toBe(approximate(amountIn(step.dries!.least, 's')) * 1000);
        expect(dryingDelay(step)).toBeGreaterThan(0);
      }
    }
  });
});
