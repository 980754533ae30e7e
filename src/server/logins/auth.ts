import { betterAuth } from 'better-auth';
import { username } from 'better-auth/plugins/username';
import type { Database } from '../database/open-database.ts';
import { secret } from '../database/secret.ts';
import { freshId } from '../fresh-id.ts';

const day = 24 * 60 * 60;

/** Who leaves a device alone for a season signs in again. */
const sessionSeconds = 90 * day;

export const shortestPassword = 10;
export const longestPassword = 200;

/**
 * The sign-in library on our own tables. It is called from our own pages only and answers no address of
 * its own, so that nothing of it is open that is not asked for here.
 */
export async function openAuth({ db, kind }: Database) {
  return betterAuth({
    appName: 'Underlap',
    // Never asked at this address: our pages set its cookies.
    baseURL: 'http://localhost',
    secret: await secret(db, 'sessions'),
    database: { db, type: kind, transaction: true },
    telemetry: { enabled: false },
    logger: { disabled: true },
    user: { modelName: 'login' },
    account: { modelName: 'sign_in_way' },
    session: { expiresIn: sessionSeconds, updateAge: day },
    emailAndPassword: {
      enabled: true,
      autoSignIn: false,
      minPasswordLength: shortestPassword,
      maxPasswordLength: longestPassword,
      revokeSessionsOnPasswordReset: true,
    },
    advanced: {
      cookiePrefix: 'underlap',
      useSecureCookies: false,
      database: { generateId: freshId },
    },
    plugins: [username({ minUsernameLength: 3, maxUsernameLength: 40 })],
  });
}

export type Auth = Awaited<ReturnType<typeof openAuth>>;
