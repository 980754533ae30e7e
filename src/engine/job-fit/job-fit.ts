/**
 * Whom to send to a job. Of all ways to fill as many places as can be filled, one with the least travel, and
 * of those one that ties up the fewest qualifications the role has no use for. Exact; see
 * `least-cost-fill.ts` for what it costs. The order in which people or roles are given makes no difference.
 */
import { beyond, type Candidate, lacking, type Requires, type Role } from './job.ts';
import { type Costs, leastCostFill } from './least-cost-fill.ts';
import { ranking } from './ranked-cost.ts';
import { shortRoles } from './short-roles.ts';
import { cheapestTraining, type Training } from './training.ts';

export type Sent = {
  readonly role: string;
  readonly person: string;
  readonly travel: number;
  /** Qualifications they hold that the role has no use for. */
  readonly beyond: number;
  /** How many others may take the role and stay free. */
  readonly spare: number;
};

/** These roles together ask for more people than there are who may take any of them. */
export type Shortage = {
  readonly roles: readonly string[];
  readonly places: number;
  readonly people: readonly string[];
};

export type JobFit = {
  readonly sent: readonly Sent[];
  readonly places: number;
  readonly travel: number;
  /** Nothing where every place is filled. */
  readonly shortages: readonly Shortage[];
  /** The cheapest way to fill every place; undefined where nothing is short. */
  readonly training: Training | undefined;
};

const byId = (a: { readonly id: string }, b: { readonly id: string }): number =>
  a.id < b.id ? -1 : a.id > b.id ? 1 : 0;

export function jobFit(
  given: readonly Role[],
  people: readonly Candidate[],
  requires: Requires = new Map(),
): JobFit {
  const roles = given.toSorted(byId);
  const candidates = people.toSorted(byId);
  const places = roles.map(({ count }) => count);
  const may = candidates.map((one) => roles.map((role) => lacking(role, one).length === 0));
  const total = places.reduce((sum, count) => sum + count, 0);
  const { roleOf, filled } = leastCostFill(places, costsOf(roles, candidates, total));
  const sent = candidates.flatMap((one, at) => {
    const place = roleOf[at];
    if (place === undefined) return [];
    const role = roles[place]!;
    const spare = may.filter((row, other) => row[place] && roleOf[other] === undefined).length;
    const { id: person, travel } = one;
    return [{ role: role.id, person, travel, beyond: beyond(role, one), spare }];
  });
  const shortages = shortRoles(places, may, roleOf).map((set) => ({
    roles: set.roles.map((at) => roles[at]!.id),
    places: set.places,
    people: set.people.map((at) => candidates[at]!.id),
  }));
  return {
    sent: sent.toSorted((a, b) => (a.role < b.role ? -1 : a.role > b.role ? 1 : 0)),
    places: total,
    travel: sent.reduce((sum, { travel }) => sum + travel, 0),
    shortages,
    training: filled < total ? cheapestTraining(roles, candidates, requires) : undefined,
  };
}

function costsOf(roles: readonly Role[], people: readonly Candidate[], places: number): Costs {
  const most = people.reduce((max, { holds }) => Math.max(max, holds.size), 0);
  const cost = ranking(places, [most]);
  return people.map((one) =>
    roles.map((role) =>
      lacking(role, one).length === 0 ? cost([one.travel, beyond(role, one)]) : undefined,
    ),
  );
}
