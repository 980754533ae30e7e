import { describe, expect, it } from 'vitest';
import { type FaultKind, faultKinds, zonesOn } from '#engine/inspection/fault.ts';
import { type FaultyWall, faultyWall, mostFaults } from '#engine/inspection/faulty-wall.ts';
import { attemptFrom } from '#engine/marking/attempt-from.ts';
import { review } from '#engine/marking/review.ts';
import { compare } from '#engine/measure/arithmetic.ts';
import { formatExact } from '#engine/measure/format-exact.ts';
import { approximate } from '#engine/measure/rational.ts';
import { choicesOf } from '#engine/method/offered.ts';
import { judge } from '#engine/method/rule.ts';
import { content, type Wall, walls } from '../../content/walls.ts';

const seeds = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'];

const drawn = new Map<string, readonly FaultyWall[]>();
const faultyOn = ({ name, sequence }: Wall): readonly FaultyWall[] => {
  const known = drawn.get(name) ?? seeds.map((seed) => faultyWall(sequence, `${name}/${seed}`)!);
  drawn.set(name, known);
  return known;
};

const fileOf = ({ attempt: { sequence, played } }: FaultyWall) => ({
  method: sequence.method.id,
  site: sequence.site,
  steps: played.map(({ card, settings, minute }) => ({
    step: card,
    settings: Object.fromEntries([...settings].map(([id, value]) => [id, formatExact(value)])),
    minute: approximate(minute!),
  })),
});

describe('laws', () => {
  it.each(walls)('has as many faults as its review has items, 1 to 3: $name', (wall) => {
    for (const { attempt, review: told, faults } of faultyOn(wall)) {
      expect(review(attempt)).toEqual(told);
      expect(faults.map(({ item }) => item)).toEqual(told.items);
      expect(faults.map(({ kind }) => kind)).toEqual(told.items.map(({ kind }) => kind));
      expect(faults.length).toBeGreaterThanOrEqual(1);
      expect(faults.length).toBeLessThanOrEqual(mostFaults);
    }
  });

  it.each(walls)('has no fault that cannot be pointed at, nor two at one place: $name', (wall) => {
    const known = zonesOn(wall.sequence);
    expect(known).not.toContain('everywhere');
    for (const { faults, review: told } of faultyOn(wall)) {
      const places = faults.flatMap(({ kind, zones }) => zones.map((zone) => `${kind} ${zone}`));
      expect(new Set(places).size).toBe(places.length);
      faults.forEach(({ zones, cards, item, shows }, index) => {
        expect(zones.length).toBeGreaterThan(0);
        expect(zones.every((zone) => known.includes(zone))).toBe(true);
        expect(cards).toContain(item.card);
        const leaks = told.water.leaks.some(({ breaches }) => breaches.includes(index));
        expect(shows === 'drawn' || leaks).toBe(true);
      });
      const cards = faults.flatMap((fault) => fault.cards);
      expect(new Set(cards).size).toBe(cards.length);
    }
  });

  it.each(walls)('is work that somebody could have entered: $name', (wall) => {
    for (const faulty of faultyOn(wall)) {
      const { sequence, played } = faulty.attempt;
      for (const { card, settings } of played) {
        const { asks } = sequence.steps.find(({ id }) => id === card) ?? { asks: [] };
        expect([...settings.keys()]).toEqual(asks.map(({ id }) => id));
        for (const { id, sheetNumber } of asks) {
          const offered = choicesOf(sheetNumber.entry!);
          expect(offered.some((value) => compare(value, settings.get(id)!) === 0)).toBe(true);
        }
      }
      const read = attemptFrom(fileOf(faulty), content);
      expect(read.ok && review(read.value)).toEqual(faulty.review);
    }
  });

  it.each(walls)('waits out what dries and sets all right, but for its faults: $name', (wall) => {
    for (const { attempt, faults } of faultyOn(wall)) {
      const wronglySet = attempt.played.flatMap(({ card, settings }) => {
        const step = attempt.sequence.steps.find(({ id }) => id === card);
        return (step?.asks ?? [])
          .filter(({ id, rule }) => !judge(rule, settings.get(id)!).within)
          .map(() => card);
      });
      const told = faults.filter(({ kind }) => kind === 'out-of-tolerance');
      expect(wronglySet.toSorted()).toEqual(told.map(({ item }) => item.card).toSorted());
    }
  });

  it('is the same for the same seed, and another for another', () => {
    for (const wall of walls.filter((_, place) => place % 13 === 0)) {
      const [first, again] = [0, 1].map(() => faultyWall(wall.sequence, `${wall.name}/a`));
      expect(again).toEqual(first);
      const others = faultyOn(wall).map(({ attempt }) => JSON.stringify(attempt.played, asText));
      expect(new Set(others).size).toBe(seeds.length);
    }
  });

  it('has every kind of fault, and 1, 2 and 3 of them, on the walls of every method', () => {
    for (const method of content.methods.keys()) {
      const faulty = walls
        .filter(({ sequence }) => sequence.method.id === method)
        .flatMap(faultyOn);
      const kinds = new Set<FaultKind>(faulty.flatMap(({ faults }) => faults.map((f) => f.kind)));
      expect([...faultKinds].every((kind) => kinds.has(kind))).toBe(true);
      expect(new Set(faulty.map(({ faults }) => faults.length))).toEqual(new Set([1, 2, 3]));
    }
  });

  it('hides nothing where nothing can be found', () => {
    const { sequence } = walls[0]!;
    const bare = {
      ...sequence,
      steps: sequence.steps.map((step) => ({ ...step, draws: [] })),
      joints: [],
    };
    expect(faultyWall(bare, 'a')).toBeUndefined();
  });
});

const asText = (_: string, value: unknown): unknown =>
  typeof value === 'bigint' ? String(value) : value instanceof Map ? [...value] : value;
