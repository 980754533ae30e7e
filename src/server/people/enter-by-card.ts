/** What the holder of a crew card can do with it: make a login, set a new password, or bring a login along. */
import { z } from 'zod';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Db } from '../database/open-database.ts';
import { type Auth, longestPassword, shortestPassword } from '../logins/auth.ts';
import {
  create,
  endOthers,
  forgetTries,
  type From,
  hasEmail,
  loginOf,
  remove,
  setPassword,
  signIn,
  type SignedIn,
} from '../logins/logins.ts';
import { type Limit, waitFor } from '../logins/throttle.ts';
import { type Invitation, invitation, use } from './cards.ts';

type At = { readonly auth: Auth; readonly db: Db };

/** Looks and tries from one address, where a whole crew may open its cards behind one router. */
const perAddress: Limit = { most: 300, seconds: 15 * 60 };

/** `INVALID` says no more, whatever is the matter with the card. */
export type CardFault =
  | { readonly code: 'INVALID' | 'NAME_WRONG' | 'NAME_TAKEN' | 'PASSWORD_SHORT' }
  | { readonly code: 'NOT_RIGHT' | 'ALREADY_HERE' }
  | { readonly code: 'TOO_OFTEN'; readonly seconds: number };

/** `knownAs`: the login that the card sets a new password for. */
export type OpenCard = Invitation & { readonly knownAs: string | null };

export async function open(
  db: Db,
  secret: string,
  from: From,
  now: Date,
): Promise<Result<OpenCard, CardFault>> {
  const seconds = await waitFor(db, `card/${from.address}`, perAddress, now);
  if (seconds > 0) return fault({ code: 'TOO_OFTEN', seconds });
  const invited = await invitation(db, secret, now.toISOString());
  if (!invited) return fault({ code: 'INVALID' });
  return ok({ ...invited, knownAs: await ownLogin(db, invited) });
}

/**
 * The name of the login that is this company's alone to reset. One that takes part elsewhere, too, is not:
 * or a company could let itself into another by a card.
 */
async function ownLogin(db: Db, { login, company }: Invitation): Promise<string | null> {
  if (login === null) return null;
  const elsewhere = await db
    .selectFrom('person')
    .select('id')
    .where('login_id', '=', login)
    .where('company_id', '!=', company)
    .executeTakeFirst();
  if (elsewhere) return null;
  const known = await db
    .selectFrom('login')
    .select(['username', 'email'])
    .where('id', '=', login)
    .executeTakeFirst();
  return known ? (known.username ?? (hasEmail(known.email) ? known.email : null)) : null;
}

// What the sign-in library takes for a user name; an address is told by its sign.
const nameForm = z.union([z.email().max(200), z.string().regex(/^[a-zA-Z0-9._]{3,40}$/)]);

export type Entered = { readonly company: string; readonly signedIn: SignedIn };

/** A login of the holder's own: made and linked; or with a new password where there is one. */
export async function fresh(
  at: At,
  secret: string,
  given: { readonly name: string; readonly password: string },
  from: From,
  now: Date,
): Promise<Result<Entered, CardFault>> {
  const opened = await open(at.db, secret, from, now);
  if (!opened.ok) return opened;
  const card = opened.value;
  const { password } = given;
  if (password.length < shortestPassword || password.length > longestPassword) {
    return fault({ code: 'PASSWORD_SHORT' });
  }
  const used = { secret, at: now.toISOString() };
  if (card.knownAs !== null && card.login !== null) {
    if (!(await use(at.db, card, { ...used, login: card.login })))
      return fault({ code: 'INVALID' });
    await setPassword(at.auth, card.login, password);
    await endOthers(at.db, card.login, '');
    await forgetTries(at.db, card.knownAs);
    return entered(at, card, { name: card.knownAs, password }, from, now);
  }
  const name = nameForm.safeParse(given.name.trim());
  if (!name.success) return fault({ code: 'NAME_WRONG' });
  const known = name.data.includes('@') ? { email: name.data } : { username: name.data };
  const made = await create(at.auth, { name: card.name, password, ...known });
  if (!made.ok) return fault({ code: 'NAME_TAKEN' });
  if (!(await use(at.db, card, { ...used, login: made.value }))) {
    await remove(at.db, made.value);
    return fault({ code: 'INVALID' });
  }
  return entered(at, card, { name: name.data, password }, from, now);
}

async function entered(
  at: At,
  { company }: Invitation,
  named: { readonly name: string; readonly password: string },
  from: From,
  now: Date,
): Promise<Result<Entered, CardFault>> {
  const signedIn = await signIn(at, named, from, now);
  return signedIn.ok ? ok({ company, signedIn: signedIn.value }) : signedIn;
}

/** Signs in with a login that the holder has, and links it to the company of the card, too. */
export async function join(
  at: At,
  secret: string,
  given: { readonly name: string; readonly password: string },
  from: From,
  now: Date,
): Promise<Result<Entered, CardFault>> {
  const opened = await open(at.db, secret, from, now);
  if (!opened.ok) return opened;
  const { company, person } = opened.value;
  const signedIn = await signIn(at, given, from, now);
  if (!signedIn.ok) return signedIn;
  const login = await loginOf(at.db, given.name);
  if (login === undefined) return fault({ code: 'NOT_RIGHT' });
  const taken = await at.db
    .selectFrom('person')
    .select('id')
    .where('company_id', '=', company)
    .where('login_id', '=', login)
    .where('id', '!=', person)
    .executeTakeFirst();
  if (taken) return fault({ code: 'ALREADY_HERE' });
  const isUsed = await use(at.db, opened.value, { secret, login, at: now.toISOString() });
  return isUsed ? ok({ company, signedIn: signedIn.value }) : fault({ code: 'INVALID' });
}
