import { createHash, randomBytes } from 'node:crypto';

const bytes = 256 / 8;
/** By its beginning a token that was left lying in a file can be told for what it is. */
const beginning = 'underlap_';
const form = new RegExp(`^${beginning}[A-Za-z0-9_-]{43}$`);

/** 256 random bits as one word. */
export const freshToken = (): string => beginning + randomBytes(bytes).toString('base64url');

/** What is kept of it: from 256 random bits nobody finds the way back, so it needs no salt. */
export const tokenDigest = (token: string): string =>
  createHash('sha256').update(token).digest('hex');

/** The token of an `Authorization` header (RFC 6750, section 2.1); undefined where it holds none of ours. */
export function tokenIn(header: string | null | undefined): string | undefined {
  const [, token = ''] = /^bearer +(\S+) *$/i.exec(header ?? '') ?? [];
  return form.test(token) ? token : undefined;
}
