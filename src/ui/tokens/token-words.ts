import type { Scope, TokenFault, TokenRow } from '#engine/record/token.ts';
import { m } from '#ui/messages/generated/messages.js';

const scopes: Readonly<Record<Scope, () => string>> = {
  'people.read': m.tokens_people_read,
  'people.email': m.tokens_people_email,
  'certificates.read': m.tokens_certificates_read,
  'board.read': m.tokens_board_read,
  'assignments.read': m.tokens_assignments_read,
  'attempts.read': m.tokens_attempts_read,
};

export const scopeWords = (scope: Scope): string => scopes[scope]();

export const stateWords: Readonly<Record<TokenRow['state'], () => string>> = {
  good: m.tokens_state_good,
  expired: m.tokens_state_expired,
  revoked: m.tokens_state_revoked,
};

export const faultWords: Readonly<Record<TokenFault, () => string>> = {
  LABEL_WRONG: m.tokens_fault_label,
  SCOPES_WRONG: m.tokens_fault_scopes,
  DAYS_WRONG: m.tokens_fault_days,
  TOO_MANY: m.tokens_fault_many,
  MADE_BEFORE: m.tokens_fault_before,
  ABSENT: m.tokens_fault_absent,
};
