import type { Content } from '#engine/compile/content.ts';
import { fault, type Result } from '#engine/result.ts';
import { isAnyReal } from '../companies/companies.ts';
import { isSetUpCode } from '../companies/set-up-code.ts';
import type { Desk } from '../desk.ts';
import { waitFor } from '../logins/throttle.ts';
import { type Demo, makeDemo } from './make-demo.ts';

/** Like setting up the first company: `DONE` where there is one, `CODE` where the code is not right. */
export type DemoFault = 'DONE' | 'CODE' | 'TOO_OFTEN';

const limit = { most: 20, seconds: 15 * 60 };

/** Makes the invented company for whoever reads the server's window; it takes some ten seconds. */
export async function setUpDemo(
  { database, auth }: Pick<Desk, 'database' | 'auth'>,
  content: Content,
  code: string,
  address: string,
  now: Date,
): Promise<Result<Demo, DemoFault>> {
  const { db } = database;
  if (await isAnyReal(db)) return fault('DONE');
  if ((await waitFor(db, `set-up/${address}`, limit, now)) > 0) return fault('TOO_OFTEN');
  if (!(await isSetUpCode(db, code))) return fault('CODE');
  const made = await makeDemo(database, auth, content, { now });
  return made.ok ? made : fault('DONE');
}
