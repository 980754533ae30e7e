/** What a token is good for, as it is kept. */
import { type Scope, scopes } from '#engine/record/token.ts';

/** Single spaces between, in the order of the list. */
export const scopesText = (held: readonly Scope[]): string =>
  scopes.filter((scope) => held.includes(scope)).join(' ');

export const scopesFrom = (text: string): readonly Scope[] => {
  const words = text.split(' ');
  return scopes.filter((scope) => words.includes(scope));
};
