import { describe, expect, it } from 'vitest';
import { anySite, benchOf, mostFromElsewhere, startingValue } from '#engine/method/bench.ts';
import { judge } from '#engine/method/rule.ts';
import { siteFrom } from '#engine/method/site.ts';
import { randomFrom } from '#engine/random.ts';
import { content, walls } from '../../content/walls.ts';

const someWalls = walls.filter((_, place) => place % 7 === 0);

describe('laws', () => {
  it.each(someWalls)('the bench of $name holds what the wall needs, once', ({ sequence }) => {
    const ids = benchOf(sequence, randomFrom(1)).map(({ id }) => id as string);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual(expect.arrayContaining(sequence.steps.map(({ id }) => id)));
    const decoys = sequence.strays.filter(({ kind }) => kind === 'decoy');
    const elsewhere = sequence.strays.length - decoys.length;
    expect(ids.length).toBe(
      sequence.steps.length + decoys.length + Math.min(elsewhere, mostFromElsewhere),
    );
  });

  it('lies the same for the same seed, and otherwise for another', () => {
    const { sequence } = walls[0]!;
    const order = (seed: number) => benchOf(sequence, randomFrom(seed)).map(({ id }) => id);
    expect(order(7)).toEqual(order(7));
    expect(order(7)).not.toEqual(order(8));
  });

  it.each(someWalls)('no setting of $name starts at a right value', ({ sequence }) => {
    for (const ask of sequence.steps.flatMap(({ asks }) => asks)) {
      const value = startingValue(ask, randomFrom(ask.id));
      if (value) expect(judge(ask.rule, value).within, ask.id).toBe(false);
    }
  });

  it('a step of another wall asks for its settings, like the steps of this one', () => {
    const cards = walls.flatMap(({ sequence }) => {
      const here = new Set<string>(sequence.steps.map(({ id }) => id));
      return benchOf(sequence, randomFrom(3)).filter(({ id }) => !here.has(id));
    });
    expect(cards.some(({ asks }) => asks.length > 0)).toBe(true);
  });

  it('any site is one that its method knows', () => {
    for (const { site } of content.methods.values()) {
      for (let seed = 0; seed < 20; seed += 1) {
        const drawn = anySite(site, randomFrom(seed));
        expect(siteFrom(site, drawn)).toEqual({ ok: true, value: drawn });
      }
    }
  });
});
