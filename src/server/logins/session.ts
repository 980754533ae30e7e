import { createHmac, timingSafeEqual } from 'node:crypto';
import type { Db } from '../database/open-database.ts';

/** Who has signed in, and how long since that was last made to last. */
export type Session = {
  readonly id: string;
  readonly token: string;
  readonly login: string;
  readonly name: string;
  readonly renewed: Date;
};

export const sessionCookie = 'underlap.session_token';

/** The token in a cookie as the sign-in library signs it (HMAC-SHA256); undefined where it is forged. */
export function tokenFrom(cookie: string, key: string): string | undefined {
  const dot = cookie.lastIndexOf('.');
  if (dot < 1) return undefined;
  const token = cookie.slice(0, dot);
  const given = Buffer.from(cookie.slice(dot + 1), 'base64');
  const right = createHmac('sha256', key).update(token).digest();
  return given.length === right.length && timingSafeEqual(given, right) ? token : undefined;
}

const instant = (value: unknown): Date => (value instanceof Date ? value : new Date(String(value)));

/** The session behind a cookie, by one look into the database: ended is ended, at once. */
export async function sessionFrom(
  db: Db,
  cookie: string | undefined,
  key: string,
  now: Date,
): Promise<Session | undefined> {
  const token = cookie === undefined ? undefined : tokenFrom(cookie, key);
  if (token === undefined) return undefined;
  const row = await db
    .selectFrom('session')
    .innerJoin('login', 'login.id', 'session.userId')
    .select(['session.id', 'login.id as login', 'login.name', 'expiresAt', 'session.updatedAt'])
    .where('token', '=', token)
    .executeTakeFirst();
  if (!row || instant(row.expiresAt) <= now) return undefined;
  const { id, login, name } = row;
  return { id, token, login, name, renewed: instant(row.updatedAt) };
}
