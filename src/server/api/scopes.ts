/** What a token may be good for: the closed list, in the order in which they are shown. */
export const scopes = [
  'people.read',
  'people.email',
  'certificates.read',
  'board.read',
  'assignments.read',
  'attempts.read',
] as const;

export type Scope = (typeof scopes)[number];

/** As they are kept: single spaces between, in the order of the list. */
export const scopesText = (held: readonly Scope[]): string =>
  scopes.filter((scope) => held.includes(scope)).join(' ');

export const scopesFrom = (text: string): readonly Scope[] => {
  const words = text.split(' ');
  return scopes.filter((scope) => words.includes(scope));
};
