import { one } from '#engine/measure/rational.ts';
import type { Stray } from '#engine/method/sequence.ts';
import type { Attempt } from './attempt.ts';
import type { NotOnThisWall } from './deviation.ts';

const elsewhere = {
  en: 'This step belongs to another kind of wall. Read the site before you start.',
  es: 'Este paso es de otro tipo de muro. Lea las condiciones del sitio antes de empezar.',
};

/** Cards that belong on no such wall: decoys and steps of other sites. */
export function notOnThisWall({ sequence, played }: Attempt): readonly NotOnThisWall[] {
  return played.flatMap(({ card }, at) => {
    const stray = sequence.strays.find((candidate) => strayId(candidate) === card);
    return stray ? [{ kind: 'not-on-this-wall', at, share: one, ...charge(stray) }] : [];
  });
}

const strayId = (stray: Stray): string => (stray.kind === 'decoy' ? stray.decoy.id : stray.step.id);

/** A decoy says itself why it is wrong; a step of another wall is work for nothing. */
function charge(stray: Stray): Pick<NotOnThisWall, 'card' | 'severity' | 'because' | 'rework'> {
  if (stray.kind === 'other-site') {
    const { id, rework } = stray.step;
    return {
      card: id,
      severity: 'minor',
      because: elsewhere,
      rework: { ...rework, undo: 'in-place' },
    };
  }
  const { id, severity, because, rework } = stray.decoy;
  return { card: id, severity, because, rework };
}
