import { z } from 'zod';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Desk } from '../desk.ts';
import { longestPassword, shortestPassword } from '../logins/auth.ts';
import { create, type From, signIn, type SignedIn } from '../logins/logins.ts';
import { waitFor } from '../logins/throttle.ts';
import { nameForm } from '../people/names.ts';
import { found, isAnyReal } from './companies.ts';
import { isSetUpCode } from './set-up-code.ts';

const form = z.object({
  company: nameForm,
  name: nameForm,
  email: z.email().max(200),
  password: z.string().min(shortestPassword).max(longestPassword),
  code: z.string().max(100),
});

export type SetUpFault =
  | { readonly field: 'company' | 'name' | 'email' | 'password' | 'code' }
  | { readonly seconds: number }
  | 'DONE';

export type SetUp = { readonly company: string; readonly signedIn: SignedIn };

const limit = { most: 20, seconds: 15 * 60 };

/** Makes the first company of a server and signs in who keeps its office. */
export async function setUp(
  { database: { db }, auth }: Pick<Desk, 'database' | 'auth'>,
  given: unknown,
  from: From,
  now: Date,
): Promise<Result<SetUp, SetUpFault>> {
  if (await isAnyReal(db)) return fault('DONE');
  const seconds = await waitFor(db, `set-up/${from.address}`, limit, now);
  if (seconds > 0) return fault({ seconds });
  const read = form.safeParse(given);
  if (!read.success) return fault({ field: read.error.issues[0]!.path[0] as 'company' });
  const { company: name, name: office, email, password, code } = read.data;
  if (!(await isSetUpCode(db, code))) return fault({ field: 'code' });
  const login = await create(auth, { name: office, email, password });
  if (!login.ok) return fault({ field: 'email' });
  const { company } = await found(db, { name, office, login: login.value, at: now.toISOString() });
  const signedIn = await signIn({ auth, db }, { name: email, password }, from, now);
  if (!signedIn.ok) throw new Error('The new login does not sign in.');
  return ok({ company, signedIn: signedIn.value });
}
