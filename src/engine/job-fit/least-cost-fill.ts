/**
 * Fills roles with people, each in one role at most: as many places as can be filled, and of all ways to
 * fill that many one of least cost. Exact: successive shortest paths of the minimum-cost flow from people
 * to roles (Busacker & Gowen 1960; Ahuja, Magnanti & Orlin, Network Flows, 1993, section 9.7), where each
 * path puts one more person into a role and moves others on. Paths are looked for among the roles alone, a
 * step from one to another being the cheapest move of somebody who is in the first.
 *
 * With P people, R roles and F places filled it costs F · (P·R + R³) at most. Of equal ways the first in the
 * order of people and roles is taken, so the same lists give the same answer.
 */

/** By person and role: a whole number of 0 or more, or undefined where the person may not take the role. */
export type Costs = readonly (readonly (number | undefined)[])[];

export type Filled = {
  /** By person: their role, or undefined. */
  readonly roleOf: readonly (number | undefined)[];
  readonly filled: number;
  readonly cost: number;
};

type Step = { readonly cost: number; readonly person: number; readonly from: number | undefined };

export function leastCostFill(places: readonly number[], costs: Costs): Filled {
  const roleOf: (number | undefined)[] = costs.map(() => undefined);
  const room = [...places];
  let [filled, cost] = [0, 0];
  for (;;) {
    const steps = cheapestWays(places.length, costs, roleOf);
    const end = cheapestEnd(steps, room);
    if (end === undefined) return { roleOf, filled, cost };
    cost += steps[end]!.cost;
    filled += 1;
    room[end]! -= 1;
    follow(steps, end, roleOf);
  }
}

/** By role, the cheapest way to bring one more person into it: that person, and the role they come from. */
function cheapestWays(
  roles: number,
  costs: Costs,
  roleOf: readonly (number | undefined)[],
): readonly (Step | undefined)[] {
  const best = cheapestFree(roles, costs, roleOf);
  const moves = cheapestMoves(roles, costs, roleOf);
  // Bellman-Ford: a move may save cost, yet no circle of moves does, for what is filled is of least cost.
  for (let round = 0, changed = true; changed && round < roles; round += 1) {
    changed = false;
    for (let from = 0; from < roles; from += 1) {
      const way = best[from];
      if (!way) continue;
      for (let to = 0; to < roles; to += 1) {
        const move = moves[from]![to];
        if (!move || way.cost + move.cost >= (best[to]?.cost ?? Infinity)) continue;
        best[to] = { cost: way.cost + move.cost, person: move.person, from };
        changed = true;
      }
    }
  }
  return best;
}

function cheapestFree(roles: number, costs: Costs, roleOf: readonly (number | undefined)[]) {
  const best: (Step | undefined)[] = Array.from({ length: roles }, () => undefined);
  costs.forEach((row, person) => {
    if (roleOf[person] !== undefined) return;
    row.forEach((cost, role) => {
      if (cost === undefined || cost >= (best[role]?.cost ?? Infinity)) return;
      best[role] = { cost, person, from: undefined };
    });
  });
  return best;
}

type Move = { readonly cost: number; readonly person: number };

function cheapestMoves(roles: number, costs: Costs, roleOf: readonly (number | undefined)[]) {
  const moves: (Move | undefined)[][] = Array.from({ length: roles }, () => []);
  roleOf.forEach((from, person) => {
    if (from === undefined) return;
    const row = costs[person]!;
    row.forEach((there, to) => {
      if (there === undefined || to === from) return;
      const cost = there - row[from]!;
      if (cost < (moves[from]![to]?.cost ?? Infinity)) moves[from]![to] = { cost, person };
    });
  });
  return moves;
}

function cheapestEnd(
  steps: readonly (Step | undefined)[],
  room: readonly number[],
): number | undefined {
  return steps.reduce<number | undefined>((end, step, role) => {
    if (!step || room[role]! <= 0) return end;
    return end === undefined || step.cost < steps[end]!.cost ? role : end;
  }, undefined);
}

/** Moves everybody along the way that ends in a role. */
function follow(
  steps: readonly (Step | undefined)[],
  end: number,
  roleOf: (number | undefined)[],
): void {
  for (let role: number | undefined = end; role !== undefined;) {
    const { person, from }: Step = steps[role]!;
    roleOf[person] = role;
    role = from;
  }
}
