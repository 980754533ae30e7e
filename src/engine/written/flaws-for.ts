import { randomFrom, pick } from '#engine/random.ts';
import type { Flaw } from '#engine/inspection/flaw.ts';
import type { StepId } from '#engine/method/method.ts';
import { precedes } from '#engine/method/partial-order.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import type { HiddenFault } from './question.ts';

/**
 * The ways to build this fault into the wall, the likelier ones first; none where the wall has no such
 * step, order, wait, setting or decoy. A decoy comes after any of the steps that it spoils.
 */
export function flawsFor(sequence: Sequence, fault: HiddenFault, seed: string): readonly Flaw[] {
  const { steps, order } = sequence;
  const placeOf = (id: StepId): number => steps.findIndex((step) => step.id === id);
  switch (fault.kind) {
    case 'left-out': {
      const step = placeOf(fault.step);
      return step < 0 ? [] : [{ kind: 'left-out', step }];
    }
    case 'out-of-order': {
      const pair = [placeOf(fault.before), placeOf(fault.after)] as const;
      if (pair[0] < 0 || pair[1] < 0) return [];
      const [before, after] = precedes(order, ...pair) ? pair : ([pair[1], pair[0]] as const);
      if (!precedes(order, before, after)) return [];
      const flaw = { kind: 'out-of-order', before, after } as const;
      return [
        { ...flaw, moved: 'after' },
        { ...flaw, moved: 'before' },
      ];
    }
    case 'rushed': {
      const step = placeOf(fault.step);
      return steps[step]?.dries ? [{ kind: 'rushed', step, minutes: fault.minutes }] : [];
    }
    case 'out-of-tolerance': {
      const step = placeOf(fault.step);
      const isAsked = steps[step]?.asks.some(({ id }) => id === fault.setting);
      const { setting, value } = fault;
      return isAsked ? [{ kind: 'out-of-tolerance', step, setting, value }] : [];
    }
    case 'not-on-this-wall':
      return decoyFlaws(sequence, fault, seed);
  }
}

function decoyFlaws(
  { steps, strays, joints }: Sequence,
  { decoy }: Extract<HiddenFault, { kind: 'not-on-this-wall' }>,
  seed: string,
): readonly Flaw[] {
  if (!strays.some((stray) => stray.kind === 'decoy' && stray.decoy.id === decoy)) return [];
  const keepers = new Set(
    joints
      .filter(({ spoiltBy }) => spoiltBy.includes(decoy))
      .flatMap(({ keptBy }) => keptBy.map(({ step }) => step)),
  );
  const places = [...steps.keys()].filter((place) => keepers.has(steps[place]!.id));
  if (places.length === 0) return [];
  return [{ kind: 'not-on-this-wall', decoy, after: pick(randomFrom(`${seed}/after`), places) }];
}
