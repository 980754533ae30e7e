/**
 * Truth: for every shipped family a job worked by hand, with the arithmetic beside it. The hand lays
 * sheets, bars and weeps out one after another and goes by published yields, so that a formula which is
 * wrong in the content comes out differently.
 */
import { describe, expect, it } from 'vitest';
import type { Family, PartId } from '#engine/takeoff/family.ts';
import { barAndStrap } from './by-hand/bar-and-strap.ts';
import { conditionsAndCost } from './by-hand/conditions-and-cost.ts';
import { drainage } from './by-hand/drainage.ts';
import { usualNumbers, type HandJob } from './by-hand/job.ts';
import { membrane } from './by-hand/membrane.ts';
import { sealantAndPrimer } from './by-hand/sealant-and-primer.ts';
import { wholeWall } from './by-hand/whole-wall.ts';
import { changedIn } from './by-hand/changed.ts';
import { content, fitted, job, jobOf, part } from './shipped.ts';
import { exactly, same } from './worked-out.ts';

const jobs = [
  ...barAndStrap,
  ...membrane,
  ...sealantAndPrimer,
  ...drainage,
  ...conditionsAndCost,
  ...wholeWall,
];

const worked = ({ family, givens, numbers }: HandJob) =>
  job(family, givens, { ...usualNumbers, ...numbers });

const told = (answer: string | boolean): string =>
  typeof answer === 'boolean' ? String(answer) : same(answer);

describe.each(jobs)('$family of $givens', (hand) => {
  const instance = worked(hand);

  it.each(Object.entries(hand.answers))('%s is %s', (id, answer) => {
    expect(exactly(part(instance, id).right)).toBe(told(answer));
  });
});

describe('what is worked by hand', () => {
  it('is every part of every family', () => {
    const shipped = [...content.takeoffs.values()].map(({ id, parts }) => [
      id,
      parts.map((part) => part.id),
    ]);
    const byHand = new Map(jobs.map(({ family, answers }) => [family, Object.keys(answers)]));
    expect([...byHand].toSorted()).toEqual(shipped.toSorted());
    for (const { family, answers } of jobs) {
      expect(Object.keys(answers), family).toEqual(byHand.get(family));
    }
  });

  // So that a formula with any one of these mistakes in it would be caught by the numbers above.
  it('tells every wrong way that the families know from the right one', () => {
    const caught = new Set(
      jobs.flatMap((hand) =>
        worked(hand).parts.flatMap(({ part, slips }) =>
          slips.map(({ slip }) => `${hand.family}/${part.id}/${slip.id}`),
        ),
      ),
    );
    const known = [...content.takeoffs.values()].flatMap(({ id, parts }) =>
      parts.flatMap((part) => part.slips.map((slip) => `${id}/${part.id}/${slip.id}`)),
    );
    expect(known.filter((slip) => !caught.has(slip))).toEqual([]);
  });

  it.each([...content.takeoffs.values()])(
    'catches any one operation of $id taken for another',
    (family) => {
      const ofIt = jobs.filter((hand) => hand.family === family.id);
      for (const { id } of family.parts) {
        expect(ofIt.filter((hand) => isAsByHand(family, hand, id))).toEqual(ofIt);
      }
      const missed = family.parts.flatMap((part) =>
        [...changedIn(family, part)]
          .filter(({ family }) => ofIt.every((hand) => isAsByHand(family, hand, part.id)))
          .map(({ what }) => `${part.id}: ${what}`),
      );
      expect(missed).toEqual([]);
    },
  );
});

function isAsByHand(family: Family, hand: HandJob, id: PartId): boolean {
  const takeoff = fitted(family, { ...usualNumbers, ...hand.numbers });
  try {
    return exactly(part(jobOf(takeoff, hand.givens), id).right) === told(hand.answers[id]!);
  } catch {
    return false;
  }
}
