/** What somebody is in a company. One person may be several. */
export const roles = ['apprentice', 'trainer', 'examiner', 'office'] as const;
export type Role = (typeof roles)[number];

export const isRole = (value: unknown): value is Role => roles.some((role) => role === value);

/** From and to the form in which they are kept: words with single spaces between, in the order above. */
export const rolesFrom = (text: string): readonly Role[] => text.split(' ').filter(isRole);
export const rolesText = (held: readonly Role[]): string =>
  roles.filter((role) => held.includes(role)).join(' ');
