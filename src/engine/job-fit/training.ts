/**
 * The cheapest training after which every place of a job can be filled: the fewest qualifications to be got
 * by all together, then the fewest parts of examinations, then the least travel. Exact, by the same way of
 * filling roles: a person in a role costs what they
 * would have to get for it, with what that requires before it.
 */
import { type Candidate, type Requires, type Role, toGet } from './job.ts';
import { type Costs, leastCostFill } from './least-cost-fill.ts';
import { ranking } from './ranked-cost.ts';

export type Lesson = {
  readonly person: string;
  readonly role: string;
  readonly qualifications: readonly string[];
  /** Parts of examinations still before them in these. */
  readonly parts: number;
};

export type Training = {
  /** Those who would have to learn something. */
  readonly lessons: readonly Lesson[];
  /** Places that stay empty even so: there are not enough people who could learn it. */
  readonly stillShort: number;
};

const partsFor = (asked: readonly string[], { partsLeft }: Candidate): number | undefined =>
  asked.reduce<number | undefined>((sum, one) => {
    const parts = partsLeft.get(one);
    return sum === undefined || parts === undefined ? undefined : sum + parts;
  }, 0);

export function cheapestTraining(
  roles: readonly Role[],
  people: readonly Candidate[],
  requires: Requires,
): Training {
  const places = roles.map(({ count }) => count);
  const total = places.reduce((sum, count) => sum + count, 0);
  const { roleOf, filled } = leastCostFill(places, costsOf(roles, people, requires, total));
  const lessons = people.flatMap((one, at) => {
    const place = roleOf[at];
    if (place === undefined) return [];
    const role = roles[place]!;
    const qualifications = toGet(role, one, requires);
    if (qualifications.length === 0) return [];
    const parts = partsFor(qualifications, one) ?? 0;
    return [{ person: one.id, role: role.id, qualifications, parts }];
  });
  return { lessons, stillShort: total - filled };
}

function costsOf(
  roles: readonly Role[],
  people: readonly Candidate[],
  requires: Requires,
  places: number,
): Costs {
  const named = new Set([...requires.keys(), ...roles.flatMap(({ needs }) => needs)]);
  const parts = people.reduce((max, one) => Math.max(max, 0, ...one.partsLeft.values()), 0);
  const travel = people.reduce((max, one) => Math.max(max, one.travel), 0);
  const cost = ranking(places, [named.size * parts, travel]);
  return people.map((one) =>
    roles.map((role) => {
      const asked = toGet(role, one, requires);
      const left = partsFor(asked, one);
      return left === undefined ? undefined : cost([asked.length, left, one.travel]);
    }),
  );
}
