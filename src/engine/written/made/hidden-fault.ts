import type { Flaw } from '#engine/inspection/flaw.ts';
import { flawsOf } from '#engine/inspection/flaw.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { phrase } from '#engine/written/patterns.ts';
import { wallHiding } from '#engine/written/hidden-wall.ts';
import type { HiddenFault } from '#engine/written/question.ts';
import { askedOf, wallWords, type Maker } from './maker.ts';

/** A wall with one fault, drawn from all that can be wrong with it; most draws can be seen as one. */
export const hiddenFault: Maker = (ground, random, id) => {
  const { sequence, patterns } = ground;
  const flaw = flawsOf(sequence)(random);
  const fault = flaw && faultFrom(sequence, flaw);
  const item = fault && wallHiding(sequence, { id, fault })?.faults[0]?.item;
  if (!item) return undefined;
  const { because, card } = item;
  const step = sequence.steps.find((one) => one.id === card) ?? stepSpoilt(sequence, flaw);
  if (!step) return undefined;
  const ask = phrase(patterns, 'fault-ask', { wall: wallWords(ground) });
  const point = phrase(patterns, 'fault-point', { step: step.say, because });
  return {
    ...askedOf(ground, step, id, ask, point),
    kind: 'find-fault',
    method: sequence.method.id,
    site: sequence.site,
    fault,
    because,
  };
};

/** A decoy is no step: it is evidence for the one that it spoils. */
const stepSpoilt = ({ steps }: Sequence, flaw: Flaw | undefined) =>
  flaw?.kind === 'not-on-this-wall' ? steps[flaw.after] : undefined;

function faultFrom({ steps }: Sequence, flaw: Flaw): HiddenFault {
  switch (flaw.kind) {
    case 'left-out':
      return { kind: flaw.kind, step: steps[flaw.step]!.id };
    case 'out-of-order':
      return { kind: flaw.kind, before: steps[flaw.before]!.id, after: steps[flaw.after]!.id };
    case 'rushed':
      return { kind: flaw.kind, step: steps[flaw.step]!.id, minutes: flaw.minutes };
    case 'out-of-tolerance': {
      const { setting, value } = flaw;
      return { kind: flaw.kind, step: steps[flaw.step]!.id, setting, value };
    }
    case 'not-on-this-wall':
      return { kind: flaw.kind, decoy: flaw.decoy };
  }
}
