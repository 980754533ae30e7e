import { describe, expect, it } from 'vitest';
import { zonesOn } from '#engine/inspection/fault.ts';
import { faultyWall } from '#engine/inspection/faulty-wall.ts';
import { kindsAt, suspects } from '#engine/inspection/suspects.ts';
import { markFinds } from '#engine/inspection/mark-finds.ts';
import { walls } from '../../content/walls.ts';

const seeds = ['a', 'b', 'c', 'd', 'e'];

describe('laws, on every wall', () => {
  it.each(walls)('every fault can be said at every place where it shows: $name', (wall) => {
    for (const seed of seeds) {
      const faulty = faultyWall(wall.sequence, `${wall.name}/${seed}`)!;
      for (const { zones, kind, cards } of faulty.faults) {
        for (const zone of zones) {
          expect(kindsAt(wall.sequence, zone)).toContain(kind);
          const named = suspects(wall.sequence, zone, kind).filter(({ card }) =>
            cards.some((one) => one === card),
          );
          expect(named.length, `${kind} ${zone}`).toBeGreaterThan(0);
          for (const { card } of named) {
            expect(markFinds(faulty, [{ zone, kind, card }]).finds[0]?.verdict).toBe('found');
          }
        }
      }
    }
  });

  it.each(walls)('there is something to suspect at every place: $name', ({ sequence }) => {
    for (const zone of zonesOn(sequence)) expect(kindsAt(sequence, zone).length).toBeGreaterThan(0);
  });
});

describe('truth', () => {
  it('only what dries is rushed, and only what is set is out of tolerance', () => {
    const { sequence } = walls[0]!;
    for (const zone of zonesOn(sequence)) {
      for (const { card } of suspects(sequence, zone, 'rushed')) {
        expect(sequence.steps.find(({ id }) => id === card)?.dries).toBeDefined();
      }
      for (const { card } of suspects(sequence, zone, 'out-of-tolerance')) {
        expect(sequence.steps.find(({ id }) => id === card)?.asks.length).toBeGreaterThan(0);
      }
    }
  });
});
