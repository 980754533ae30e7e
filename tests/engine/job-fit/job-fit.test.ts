import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beyond, type Candidate, lacking, type Role } from '#engine/job-fit/job.ts';
import { jobFit } from '#engine/job-fit/job-fit.ts';
import { ranking } from '#engine/job-fit/ranked-cost.ts';
import { bruteForce } from './brute-force.ts';

const someone = (
  id: string,
  holds: readonly string[],
  travel = 0,
  partsLeft: Readonly<Record<string, number>> = {},
): Candidate => ({
  id,
  holds: new Set(holds),
  travel,
  partsLeft: new Map(Object.entries(partsLeft)),
});

describe('truth', () => {
  const lead: Role = { id: 'lead', count: 1, needs: ['base', 'lead'] };
  const hands: Role = { id: 'hands', count: 2, needs: ['base'] };

  test('the lead leads, though nearer than the others', () => {
    const fit = jobFit(
      [hands, lead],
      [someone('ana', ['base', 'lead']), someone('ben', ['base'], 40), someone('cyd', ['base'], 9)],
    );
    expect(fit.sent).toEqual([
      { role: 'hands', person: 'ben', travel: 40, beyond: 0, spare: 0 },
      { role: 'hands', person: 'cyd', travel: 9, beyond: 0, spare: 0 },
      { role: 'lead', person: 'ana', travel: 0, beyond: 0, spare: 0 },
    ]);
    expect(fit).toMatchObject({ places: 3, travel: 49, shortages: [], training: undefined });
  });

  test('travel counts above holding more than is asked, which counts above nothing', () => {
    const one: Role = { id: 'one', count: 1, needs: ['base'] };
    const near = someone('near', ['base', 'corners', 'lead'], 5);
    const far = someone('far', ['base'], 6);
    const plain = someone('plain', ['base'], 5);
    expect(jobFit([one], [far, near]).sent).toMatchObject([
      { person: 'near', beyond: 2, spare: 1 },
    ]);
    expect(jobFit([one], [far, near, plain]).sent).toMatchObject([{ person: 'plain', beyond: 0 }]);
  });

  test('an impossible job names the roles that ask for too many, and the least to be learnt', () => {
    const fit = jobFit(
      [hands, lead, { id: 'corners', count: 1, needs: ['corners'] }],
      [
        someone('ana', ['base', 'lead'], 0, { corners: 4 }),
        someone('ben', ['base'], 0, { lead: 5, corners: 4 }),
        someone('cyd', ['base'], 0, { lead: 2, corners: 4 }),
        someone('dee', [], 0, { base: 4, lead: 5, corners: 1 }),
        someone('eli', [], 0, { base: 1, lead: 5 }),
      ],
    );
    expect(fit.sent).toHaveLength(3);
    expect(fit.shortages).toEqual([{ roles: ['corners'], places: 1, people: [] }]);
    expect(fit.training).toEqual({
      lessons: [{ person: 'dee', role: 'corners', qualifications: ['corners'], parts: 1 }],
      stillShort: 0,
    });
  });

  test('roles that compete for the same people are short together', () => {
    const fit = jobFit(
      [lead, { id: 'second', count: 1, needs: ['lead'] }],
      [someone('ana', ['base', 'lead'])],
    );
    expect(fit.shortages).toEqual([{ roles: ['lead', 'second'], places: 2, people: ['ana'] }]);
  });

  test('what a qualification requires is learnt before it', () => {
    const requires = new Map([['lead', ['base']]]);
    const people = [someone('dee', [], 0, { base: 4, lead: 5 })];
    expect(jobFit([{ ...lead, needs: ['lead'] }], people, requires).training?.lessons).toEqual([
      { person: 'dee', role: 'lead', qualifications: ['base', 'lead'], parts: 9 },
    ]);
  });

  test('who cannot get it by training is no way out', () => {
    const fit = jobFit([lead], [someone('ana', ['base'])]);
    expect(fit.training).toEqual({ lessons: [], stillShort: 1 });
  });

  test('a job without roles is filled', () => {
    expect(jobFit([], [someone('ana', [])])).toMatchObject({ sent: [], places: 0, shortages: [] });
  });
});

const qualifications = ['a', 'b', 'c'] as const;
const cases = fc.record({
  roles: fc.uniqueArray(
    fc.record({
      id: fc.constantFrom('r1', 'r2', 'r3'),
      count: fc.integer({ min: 1, max: 2 }),
      needs: fc.subarray([...qualifications], { minLength: 1 }),
    }),
    { selector: ({ id }) => id, maxLength: 3 },
  ),
  people: fc.uniqueArray(
    fc
      .record({
        id: fc.constantFrom('p1', 'p2', 'p3', 'p4', 'p5'),
        holds: fc.subarray([...qualifications]),
        travel: fc.nat(6),
        parts: fc.tuple(...qualifications.map(() => fc.option(fc.integer({ min: 1, max: 4 })))),
      })
      .map(({ id, holds, travel, parts }) =>
        someone(
          id,
          holds,
          travel,
          Object.fromEntries(
            qualifications.flatMap((one, at) => {
              const left = parts[at];
              return typeof left === 'number' ? [[one, left]] : [];
            }),
          ),
        ),
      ),
    { selector: ({ id }) => id, maxLength: 5 },
  ),
});

describe('laws', () => {
  test('it sends as many as can be sent, by least travel and then by least that is held beyond', () => {
    fc.assert(
      fc.property(cases, ({ roles, people }) => {
        const { sent, places } = jobFit(roles, people);
        const rank = ranking(places, [3]);
        const costs = people.map((one) =>
          roles.map((role) =>
            lacking(role, one).length === 0 ? rank([one.travel, beyond(role, one)]) : undefined,
          ),
        );
        const least = bruteForce(
          roles.map(({ count }) => count),
          costs,
        );
        expect(sent).toHaveLength(least.filled);
        expect(sent.reduce((sum, one) => sum + rank([one.travel, one.beyond]), 0)).toBe(least.cost);
      }),
      { numRuns: 400 },
    );
  });

  test('training fills every place that can be, by the fewest qualifications and then parts', () => {
    fc.assert(
      fc.property(cases, ({ roles, people }) => {
        const { training, places } = jobFit(roles, people);
        if (!training) return;
        const rank = ranking(places, [12]);
        const costs = people.map((one) =>
          roles.map((role) => {
            const left = lacking(role, one).map((each) => one.partsLeft.get(each));
            if (left.includes(undefined)) return undefined;
            return rank([left.length, left.reduce<number>((sum, each) => sum + each!, 0)]);
          }),
        );
        const least = bruteForce(
          roles.map(({ count }) => count),
          costs,
        );
        expect(places - training.stillShort).toBe(least.filled);
        const spent = training.lessons.reduce(
          (sum, one) => sum + rank([one.qualifications.length, one.parts]),
          0,
        );
        expect(spent).toBe(least.cost);
      }),
      { numRuns: 400 },
    );
  });

  test('after that training the job is filled', () => {
    fc.assert(
      fc.property(cases, ({ roles, people }) => {
        const { training } = jobFit(roles, people);
        if (!training || training.stillShort > 0) return;
        const taught = people.map((one) => {
          const lesson = training.lessons.find(({ person }) => person === one.id);
          return { ...one, holds: new Set([...one.holds, ...(lesson?.qualifications ?? [])]) };
        });
        expect(jobFit(roles, taught).shortages).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });

  test('the order of people and roles makes no difference', () => {
    fc.assert(
      fc.property(cases, ({ roles, people }) => {
        expect(jobFit(roles.toReversed(), people.toReversed())).toEqual(jobFit(roles, people));
      }),
    );
  });
});
