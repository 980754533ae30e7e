import { describe, expect, it } from 'vitest';
import { choicesOf } from '#engine/takeoff/choices.ts';
import { instanceOf } from '#engine/takeoff/instance.ts';
import { content, takeoff } from './shipped.ts';

const problems = [...content.takeoffs.keys()].flatMap((id) =>
  Array.from({ length: 40 }, (_, seed) => {
    const made = instanceOf(takeoff(id), seed);
    if (!made.ok) throw new Error(made.error.code);
    return made.value;
  }),
);

describe('laws', () => {
  it('one choice is right, none reads like another, and every other says which slip it is', () => {
    for (const instance of problems) {
      for (const { part, slips } of instance.parts) {
        const choices = choicesOf(instance, part.id, 'a');
        const where = `${instance.takeoff.family.id}/${part.id}`;
        expect(
          choices.filter(({ isRight }) => isRight),
          where,
        ).toHaveLength(1);
        for (const language of ['en', 'es'] as const) {
          expect(new Set(choices.map(({ text }) => text[language])).size, where).toBe(
            choices.length,
          );
        }
        expect(choices.length, where).toBeGreaterThanOrEqual(2);
        expect(choices.length, where).toBeLessThanOrEqual(5);
        const offered = new Set(slips.map(({ slip }) => slip.id));
        for (const { slip } of choices)
          expect(slip === undefined || offered.has(slip), where).toBe(true);
      }
    }
  });

  it('the same seed gives the same order, and the right one stands anywhere', () => {
    const [first] = problems;
    const { part } = first!.parts[0]!;
    expect(choicesOf(first!, part.id, 7)).toEqual(choicesOf(first!, part.id, 7));
    const places = Array.from({ length: 60 }, (_, seed) =>
      choicesOf(first!, part.id, seed).findIndex(({ isRight }) => isRight),
    );
    expect(new Set(places).size).toBeGreaterThan(2);
  });
});
