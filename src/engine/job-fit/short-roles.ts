/**
 * Why places stay empty: sets of roles that ask for more people than there are who may take any of them,
 * whoever is sent where (the condition of Hall 1935, with Kőnig's way from an empty place). From each role
 * that is short the set grows by the roles in which those stand who could take it.
 */

export type ShortRoles = {
  /** In their order. */
  readonly roles: readonly number[];
  /** Everybody who may take any of these roles; fewer than the places. */
  readonly people: readonly number[];
  readonly places: number;
};

/**
 * Of what was filled as far as it can be. The same set is given once. `may` says by person and role who may
 * take which.
 */
export function shortRoles(
  places: readonly number[],
  may: readonly (readonly boolean[])[],
  roleOf: readonly (number | undefined)[],
): readonly ShortRoles[] {
  const taken = places.map((_, role) => roleOf.filter((one) => one === role).length);
  const found = new Map<string, ShortRoles>();
  places.forEach((count, role) => {
    if (taken[role]! >= count) return;
    const set = grownFrom(role, places, may, roleOf);
    found.set(set.roles.join(), set);
  });
  return [...found.values()];
}

function grownFrom(
  first: number,
  places: readonly number[],
  may: readonly (readonly boolean[])[],
  roleOf: readonly (number | undefined)[],
): ShortRoles {
  const roles = new Set([first]);
  const people = new Set<number>();
  for (const role of roles) {
    may.forEach((row, person) => {
      if (!row[role]) return;
      people.add(person);
      const where = roleOf[person];
      // A set is walked in the order of its growth, what is added while walking too.
      if (where !== undefined) roles.add(where);
    });
  }
  const sorted = [...roles].toSorted((a, b) => a - b);
  return {
    roles: sorted,
    people: [...people].toSorted((a, b) => a - b),
    places: sorted.reduce((sum, role) => sum + places[role]!, 0),
  };
}
