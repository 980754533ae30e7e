import type { RoleName } from '#ui/account/role-words.ts';

/** Somebody on a list of a company's people. */
export type PersonRow = {
  readonly id: string;
  readonly name: string;
  readonly number: string | null;
  readonly crewName: string | null;
  readonly roles: readonly RoleName[];
  readonly canSignIn: boolean;
  readonly leftAt: string | null;
};

export type CrewName = { readonly id: string; readonly name: string };

/** Crews to choose from; `isMore` where others are left out. */
export type CrewChoices = {
  readonly crews: readonly CrewName[];
  readonly isMore: boolean;
  /** The name that the server looked for, or nothing. */
  readonly search: string;
  /** How many it found; `isCut` where there are others of that name. */
  readonly found: number;
  readonly isCut: boolean;
};
