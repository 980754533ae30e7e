import { isAPIError } from 'better-auth/api';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';
import type { Auth } from './auth.ts';
import { forget, type Limit, waitFor } from './throttle.ts';

/** Where somebody signs in from, as the session list shows it. */
export type From = { readonly address: string; readonly agent: string };

const headersFrom = ({ address, agent }: From): Headers =>
  new Headers({ 'user-agent': agent, 'x-forwarded-for': address });

/** Tries at one name; and from one address, where a whole crew may sign in behind one router. */
const perName: Limit = { most: 10, seconds: 15 * 60 };
const perAddress: Limit = { most: 100, seconds: 15 * 60 };

const nameKey = (name: string): string => `sign-in/${name.trim().toLowerCase()}`;

/** Lets a name be tried again at once, as after a new password was set for it. */
export const forgetTries = (db: Db, name: string): Promise<void> => forget(db, nameKey(name));

export type SignInFault =
  { readonly code: 'NOT_RIGHT' } | { readonly code: 'TOO_OFTEN'; readonly seconds: number };

/** A session cookie's value, as it goes to the browser. */
export type SignedIn = { readonly cookie: string; readonly seconds: number };

/**
 * Signs in by email or user name. A name that nobody has and a wrong password take the same time, count
 * the same and read the same, so that nobody learns who has an account.
 */
export async function signIn(
  { auth, db }: { readonly auth: Auth; readonly db: Db },
  { name, password }: { readonly name: string; readonly password: string },
  from: From,
  now: Date,
): Promise<Result<SignedIn, SignInFault>> {
  const known = name.trim().toLowerCase().slice(0, 200);
  const keys = { name: nameKey(known), address: `sign-in-from/${from.address}` };
  const seconds = Math.max(
    await waitFor(db, keys.address, perAddress, now),
    await waitFor(db, keys.name, perName, now),
  );
  if (seconds > 0) return fault({ code: 'TOO_OFTEN', seconds });
  try {
    const how = { headers: headersFrom(from), returnHeaders: true } as const;
    const { headers } = known.includes('@')
      ? await auth.api.signInEmail({ body: { email: known, password }, ...how })
      : await auth.api.signInUsername({ body: { username: known, password }, ...how });
    await forget(db, keys.name);
    return ok(cookieFrom(headers));
  } catch (error) {
    if (isAPIError(error)) return fault({ code: 'NOT_RIGHT' });
    throw error;
  }
}

function cookieFrom(headers: Headers): SignedIn {
  const [pair = '', ...attributes] = headers.getSetCookie()[0]?.split(';') ?? [];
  const age = attributes.find((attribute) => /^\s*max-age=/i.test(attribute));
  return {
    cookie: decodeURIComponent(pair.slice(pair.indexOf('=') + 1)),
    seconds: Number(age?.split('=')[1] ?? 0),
  };
}

/** For people without email: an address that never receives anything (RFC 2606, 1999, section 2). */
const noEmail = (): string => `${freshId()}@nobody.invalid`;

export const hasEmail = (email: string): boolean => !email.endsWith('.invalid');

export type NewLogin = {
  readonly name: string;
  readonly password: string;
} & ({ readonly email: string } | { readonly username: string });

/** A new login, by its id; a fault where the name is taken or not fit for one. */
export async function create(
  auth: Auth,
  { name, password, ...known }: NewLogin,
): Promise<Result<string, 'NAME_TAKEN'>> {
  const body =
    'email' in known
      ? { name, password, email: known.email.toLowerCase() }
      : { name, password, email: noEmail(), username: known.username };
  try {
    const { user } = await auth.api.signUpEmail({ body });
    // For an email that is taken the library makes up an answer, so that outsiders learn nothing.
    const { internalAdapter } = await auth.$context;
    return (await internalAdapter.findUserById(user.id)) ? ok(user.id) : fault('NAME_TAKEN');
  } catch (error) {
    if (isAPIError(error)) return fault('NAME_TAKEN');
    throw error;
  }
}

/** Whose name to sign in with it is, an email or a user name; undefined where it is nobody's. */
export async function loginOf(db: Db, name: string): Promise<string | undefined> {
  const known = name.trim().toLowerCase();
  const row = await db
    .selectFrom('login')
    .select('id')
    .where(known.includes('@') ? 'email' : 'username', '=', known)
    .executeTakeFirst();
  return row?.id;
}

/** Takes a login away again that nobody has used. */
export const remove = async (db: Db, login: string): Promise<void> => {
  await db.deleteFrom('login').where('id', '=', login).execute();
};

/** Makes a session last from now; the cookie to send. Undefined where it has ended meanwhile. */
export async function renewed(auth: Auth, cookie: string): Promise<SignedIn | undefined> {
  const headers = new Headers({ cookie: `underlap.session_token=${encodeURIComponent(cookie)}` });
  const answer = await auth.api.getSession({ headers, returnHeaders: true });
  return answer.headers.getSetCookie().length > 0 ? cookieFrom(answer.headers) : undefined;
}

export type SessionRow = {
  readonly id: string;
  readonly since: string;
  readonly agent: string;
};

/** Where somebody is signed in, the latest first. */
export async function sessions(db: Db, login: string): Promise<readonly SessionRow[]> {
  const rows = await db
    .selectFrom('session')
    .select(['id', 'createdAt', 'userAgent'])
    .where('userId', '=', login)
    .orderBy('createdAt', 'desc')
    .execute();
  return rows.map(({ id, createdAt, userAgent }) => ({
    id,
    since: new Date(createdAt as string | Date).toISOString(),
    agent: userAgent ?? '',
  }));
}

/** Ends one of somebody's own sessions, or all but one. */
export const end = async (db: Db, login: string, session: string): Promise<void> => {
  await db.deleteFrom('session').where('userId', '=', login).where('id', '=', session).execute();
};

export const endOthers = async (db: Db, login: string, but: string): Promise<void> => {
  await db.deleteFrom('session').where('userId', '=', login).where('id', '!=', but).execute();
};

const signingKey = (login: string): string => `sign-with/${login}`;

const isPassword = async (auth: Auth, login: string, password: string): Promise<boolean> => {
  const context = await auth.$context;
  const way = await context.internalAdapter.findCredentialAccount(login);
  if (!way?.password) return false;
  return context.password.verify({ hash: way.password, password });
};

/**
 * Whether somebody who is signed in is still who they say: asked where they put their name to something.
 * Counted like tries at signing in, so that an open phone is no place to guess.
 */
export async function confirm(
  { auth, db }: { readonly auth: Auth; readonly db: Db },
  login: string,
  password: string,
  now: Date,
): Promise<Result<true, SignInFault>> {
  const seconds = await waitFor(db, signingKey(login), perName, now);
  if (seconds > 0) return fault({ code: 'TOO_OFTEN', seconds });
  if (!(await isPassword(auth, login, password))) return fault({ code: 'NOT_RIGHT' });
  await forget(db, signingKey(login));
  return ok(true);
}

/** Changes the password of a login; a fault where the present one is not right. */
export async function changePassword(
  auth: Auth,
  login: string,
  { present, next }: { readonly present: string; readonly next: string },
): Promise<Result<true, 'NOT_RIGHT'>> {
  if (!(await isPassword(auth, login, present))) return fault('NOT_RIGHT');
  await setPassword(auth, login, next);
  return ok(true);
}

/** Sets the password of a login, as with a crew card made for somebody who forgot it. */
export async function setPassword(auth: Auth, login: string, password: string): Promise<void> {
  const context = await auth.$context;
  await context.internalAdapter.updatePassword(login, await context.password.hash(password));
}
