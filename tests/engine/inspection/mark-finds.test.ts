import { describe, expect, it } from 'vitest';
import { type Fault, faultKinds, zonesOn } from '#engine/inspection/fault.ts';
import { faultyWall, type FaultyWall } from '#engine/inspection/faulty-wall.ts';
import { type Find, markFinds } from '#engine/inspection/mark-finds.ts';
import { pick, randomFrom, shuffle, whole } from '#engine/random.ts';
import { walls } from '../../content/walls.ts';

const because = { en: 'because', es: 'porque' };

const fault = (kind: Fault['kind'], zones: Fault['zones'], card = zones.join('-')): Fault =>
  ({ kind, zones, cards: [card], item: { because }, shows: 'drawn' }) as unknown as Fault;

const find = (kind: Find['kind'], zone: Find['zone'], card?: string): Find => ({
  kind,
  zone,
  card,
});

const two: Pick<FaultyWall, 'faults'> = {
  faults: [
    fault('left-out', ['seam', 'toe'], 'roll-seam'),
    fault('rushed', ['wall', 'toe'], 'prime'),
  ],
};
const scoreFor = (...finds: readonly Find[]): number => markFinds(two, finds).score;

describe('truth', () => {
  it('a fault found by zone and kind is half of two', () => {
    const { score, finds, faults } = markFinds(two, [find('left-out', 'toe')]);
    expect(score).toBe(50);
    expect(finds).toMatchObject([{ verdict: 'found', fault: 0, because }]);
    expect(faults).toMatchObject([
      { verdict: 'found', by: 0 },
      { verdict: 'missed', by: undefined },
    ]);
  });

  it('the place without the kind, or with the wrong card, counts by half', () => {
    expect(scoreFor(find('out-of-order', 'wall'))).toBe(25);
    expect(scoreFor(find('rushed', 'wall', 'tape'))).toBe(25);
    expect(scoreFor(find('rushed', 'wall', 'prime'))).toBe(50);
  });

  it('a false alarm takes half a fault away, and nothing below nothing', () => {
    expect(scoreFor(find('left-out', 'seam'), find('left-out', 'ends'))).toBe(25);
    expect(scoreFor(find('left-out', 'ends'))).toBe(0);
    expect(markFinds(two, [find('left-out', 'ends')]).finds[0]?.verdict).toBe('false-alarm');
  });

  it('the same fault named at its other place costs nothing', () => {
    const { score, finds } = markFinds(two, [find('left-out', 'seam'), find('left-out', 'toe')]);
    expect(score).toBe(50);
    expect(finds.map(({ verdict }) => verdict)).toEqual(['found', 'again']);
  });

  it('a place that fits two faults goes to the one that lets both be located', () => {
    const finds = [find('out-of-order', 'toe'), find('out-of-order', 'seam')];
    for (const given of [finds, finds.toReversed()]) {
      const marked = markFinds(two, given);
      expect(marked.score).toBe(50);
      expect(marked.faults.map(({ verdict }) => verdict)).toEqual(['located', 'located']);
    }
  });

  it('a place is no use for a fault that was found there already', () => {
    const { finds } = markFinds(two, [find('rushed', 'wall'), find('left-out', 'wall')]);
    expect(finds.map(({ verdict }) => verdict)).toEqual(['found', 'false-alarm']);
  });

  it('nothing found on a wall without a fault is right', () => {
    expect(markFinds({ faults: [] }, []).score).toBe(100);
    expect(markFinds({ faults: [] }, [find('rushed', 'wall')]).score).toBe(0);
  });
});

describe('laws, on every wall', () => {
  const random = randomFrom('finds');

  it.each(walls)('perfect finds score in full, and none score nothing: $name', (wall) => {
    for (const seed of ['a', 'b', 'c']) {
      const faulty = faultyWall(wall.sequence, `${wall.name}/${seed}`)!;
      const perfect = faulty.faults.map(({ kind, zones, cards }) => ({
        kind,
        zone: pick(random, zones),
        ...(whole(random, 0, 1) === 0 ? {} : { card: pick(random, cards) }),
      }));
      const marked = markFinds(faulty, shuffle(random, perfect));
      expect(marked.score).toBe(100);
      expect(marked.faults.every(({ verdict }) => verdict === 'found')).toBe(true);
      const none = markFinds(faulty, []);
      expect(none.score).toBe(0);
      expect(none.faults.every(({ verdict }) => verdict === 'missed')).toBe(true);
    }
  });

  it.each(walls)('to name everything everywhere is worth nothing: $name', (wall) => {
    const faulty = faultyWall(wall.sequence, wall.name)!;
    const everything = zonesOn(wall.sequence).flatMap((zone) =>
      faultKinds.map((kind) => ({ zone, kind })),
    );
    const { score, faults } = markFinds(faulty, everything);
    expect(faults.every(({ verdict }) => verdict === 'found')).toBe(true);
    expect(score).toBe(0);
  });

  it.each(walls)('the order of the finds does not matter: $name', (wall) => {
    const faulty = faultyWall(wall.sequence, wall.name)!;
    const zones = zonesOn(wall.sequence);
    for (let round = 0; round < 5; round += 1) {
      const finds = Array.from({ length: whole(random, 1, 6) }, () => ({
        zone: pick(random, zones),
        kind: pick(random, faultKinds),
      }));
      const marked = markFinds(faulty, finds);
      const other = markFinds(faulty, shuffle(random, finds));
      expect(other.score).toBe(marked.score);
      expect(other.faults.map(({ verdict }) => verdict === 'found')).toEqual(
        marked.faults.map(({ verdict }) => verdict === 'found'),
      );
    }
  });
});
