/** The part of an examination that most have sat, and its scheme. */
export const scheme = 'base-of-wall-installer';
export const part = 'knowledge';
