/** What a job asks, and who might go. */

export type Role = {
  readonly id: string;
  /** How many people; 1 or more. */
  readonly count: number;
  /** Qualifications that each of them must hold. */
  readonly needs: readonly string[];
};

export type Candidate = {
  readonly id: string;
  /** Held on every day of the job. */
  readonly holds: ReadonlySet<string>;
  /** From where they are to the job, in whole units (miles, minutes); own people of the place have 0. */
  readonly travel: number;
  /**
   * Of qualifications that they do not hold: how many parts of the examination are still before them. One
   * that is not here cannot be got by training, as when it is suspended.
   */
  readonly partsLeft: ReadonlyMap<string, number>;
};

export const lacking = ({ needs }: Role, { holds }: Candidate): readonly string[] =>
  needs.filter((one) => !holds.has(one));

/** By qualification, those that must be held before it can be got. */
export type Requires = ReadonlyMap<string, readonly string[]>;

/** What somebody would have to get for a role: what they lack, and before it what that requires. */
export function toGet(role: Role, one: Candidate, requires: Requires): readonly string[] {
  const found = new Set<string>();
  const visit = (qualification: string): void => {
    if (one.holds.has(qualification) || found.has(qualification)) return;
    for (const before of requires.get(qualification) ?? []) visit(before);
    found.add(qualification);
  };
  lacking(role, one).forEach(visit);
  return [...found];
}

/** How many qualifications somebody holds that the role has no use for. */
export const beyond = ({ needs }: Role, { holds }: Candidate): number =>
  holds.size - needs.filter((one) => holds.has(one)).length;
