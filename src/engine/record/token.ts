/** A token by which a program reads a company's records: what it may be good for, and how it is told. */

/** The closed list, in the order in which they are shown. */
export const scopes = [
  'people.read',
  'people.email',
  'certificates.read',
  'board.read',
  'assignments.read',
  'attempts.read',
] as const;
export type Scope = (typeof scopes)[number];

export type TokenRow = {
  readonly id: string;
  readonly label: string;
  readonly scopes: readonly Scope[];
  readonly state: 'good' | 'expired' | 'revoked';
  readonly madeAt: string;
  /** Empty for somebody who was erased since. */
  readonly madeBy: string;
  readonly hasMakerLeft: boolean;
  readonly expiresAt: string;
  readonly revokedAt: string | null;
  readonly lastUsedOn: string | null;
};

/** `MADE_BEFORE`: it is there, and cannot be shown again. `ABSENT`: there is none, or not any more. */
export type TokenFault =
  'LABEL_WRONG' | 'SCOPES_WRONG' | 'DAYS_WRONG' | 'TOO_MANY' | 'MADE_BEFORE' | 'ABSENT';
