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
