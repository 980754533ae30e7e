import type { Sequence } from '#engine/method/sequence.ts';
import type { Breach } from '#engine/water/open-joints.ts';
import type { Deviation } from './deviation.ts';

/**
 * What a deviation means for water. Of a broken order only the critical constraints count, and they
 * concern both of their steps: whichever was lifted out, it is the pair that failed.
 */
export function breachOf(sequence: Sequence, deviation: Deviation): Breach {
  switch (deviation.kind) {
    case 'out-of-order': {
      const { broken } = deviation;
      const failed = broken.filter(({ severity }) => severity === 'critical');
      const places = new Set(failed.flatMap(({ before, after }) => [before, after]));
      return { kind: 'out-of-order', steps: [...places].map((place) => sequence.steps[place]!.id) };
    }
    case 'out-of-tolerance': {
      const { card, setting } = deviation;
      return { kind: 'out-of-tolerance', steps: [card], setting };
    }
    case 'left-out':
    case 'rushed':
      return { kind: deviation.kind, steps: [deviation.card] };
    case 'not-on-this-wall':
    case 'done-again':
      return { kind: 'spoilt', by: deviation.card };
  }
}
