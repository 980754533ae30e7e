import { randomBytes } from 'node:crypto';

const bytes = 16;

/** What stands in a verification address: 128 bits of chance, of which nothing can be told or guessed. */
export const freshPublicId = (): string => randomBytes(bytes).toString('base64url');

export const isPublicId = (text: string): boolean => /^[\w-]{22}$/.test(text);
