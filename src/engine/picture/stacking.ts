import type { Zone } from '#engine/method/drawing.ts';
import type { Applied } from './applied.ts';

const toeZones: readonly Zone[] = ['toe', 'shelf', 'front-edge', 'everywhere'];

/**
 * The layers in the order in which they lie on the wall: that of the cards, except that a bead at the
 * toe goes under a sheet that is there already, as long as its toe is loose and can be folded back.
 */
export function stacked(applied: readonly Applied[]): readonly Applied[] {
  return applied.reduce<readonly Applied[]>((below, one) => {
    if (one.layer !== 'mastic' || !toeZones.includes(one.zone)) return [...below, one];
    const pressed = below.some(({ layer, zone }) => layer === 'rolled' && toeZones.includes(zone));
    const sheet = below.findIndex(
      ({ layer, zone }) => layer === 'membrane' && toeZones.includes(zone),
    );
    return pressed || sheet < 0
      ? [...below, one]
      : [...below.slice(0, sheet), one, ...below.slice(sheet)];
  }, []);
}
