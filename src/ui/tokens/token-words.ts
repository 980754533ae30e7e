import { m } from '#ui/messages/generated/messages.js';

/** A token as the server lists it. */
export type TokenRow = {
  readonly id: string;
  readonly label: string;
  readonly scopes: readonly string[];
  readonly state: 'good' | 'expired' | 'revoked';
  readonly madeAt: string;
  readonly madeBy: string;
  readonly hasMakerLeft: boolean;
  readonly expiresAt: string;
  readonly revokedAt: string | null;
  readonly lastUsedOn: string | null;
};

const scopes: Readonly<Record<string, () => string>> = {
  'people.read': m.tokens_people_read,
  'people.email': m.tokens_people_email,
  'certificates.read': m.tokens_certificates_read,
  'board.read': m.tokens_board_read,
  'assignments.read': m.tokens_assignments_read,
  'attempts.read': m.tokens_attempts_read,
};

export const scopeWords = (scope: string): string => scopes[scope]?.() ?? scope;

export const stateWords: Readonly<Record<TokenRow['state'], () => string>> = {
  good: m.tokens_state_good,
  expired: m.tokens_state_expired,
  revoked: m.tokens_state_revoked,
};

export type TokenFault =
  'LABEL_WRONG' | 'SCOPES_WRONG' | 'DAYS_WRONG' | 'TOO_MANY' | 'MADE_BEFORE' | 'ABSENT';

export const faultWords: Readonly<Record<TokenFault, () => string>> = {
  LABEL_WRONG: m.tokens_fault_label,
  SCOPES_WRONG: m.tokens_fault_scopes,
  DAYS_WRONG: m.tokens_fault_days,
  TOO_MANY: m.tokens_fault_many,
  MADE_BEFORE: m.tokens_fault_before,
  ABSENT: m.tokens_fault_absent,
};
