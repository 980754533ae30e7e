/** The open door to verification: how often one address may ask, and what everybody is told alike. */
import type { IsoDate } from '#engine/calendar.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Db } from '../database/open-database.ts';
import { RecentTries } from '../logins/recent-tries.ts';
import { type Limit, waitFor } from '../logins/throttle.ts';
import { type Verification, verification } from './verification.ts';

/** A whole site may stand behind one router; who looks for what is not there is stopped much sooner. */
const asking: Limit = { most: 240, seconds: 60 };
const missing: Limit = { most: 30, seconds: 15 * 60 };

export type DoorFault =
  { readonly code: 'ABSENT' } | { readonly code: 'TOO_OFTEN'; readonly seconds: number };

/** Who asked lately. */
export const openDoor = (): RecentTries => new RecentTries(asking);

export type Door = { readonly db: Db; readonly askers: RecentTries };

/**
 * The first limit only spares this server, and is counted in its memory: a write for every reader would wait
 * for the disk. The second keeps certificates from being looked for, and is shared by all processes.
 */
export async function ask(
  { db, askers }: Door,
  publicId: string,
  address: string,
  at: string,
): Promise<Result<Verification, DoorFault>> {
  const now = new Date(at);
  const seconds = askers.waitFor(address, now);
  if (seconds > 0) return fault({ code: 'TOO_OFTEN', seconds });
  const found = await verification(db, publicId, at.slice(0, 10) as IsoDate);
  if (found) return ok(found);
  const wait = await waitFor(db, `verify-missing/${address}`, missing, now);
  return fault(wait > 0 ? { code: 'TOO_OFTEN', seconds: wait } : { code: 'ABSENT' });
}

/** The same as JSON. */
export const verificationAnswer = (asked: Awaited<ReturnType<typeof ask>>): Response => {
  const headers = { 'cache-control': 'no-store', 'access-control-allow-origin': '*' };
  if (asked.ok) return Response.json(asked.value, { headers });
  const { code } = asked.error;
  if (code === 'ABSENT') return Response.json({ error: code }, { status: 404, headers });
  const later = { ...headers, 'retry-after': String(asked.error.seconds) };
  return Response.json({ error: code }, { status: 429, headers: later });
};
