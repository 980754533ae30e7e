/**
 * The code by which a sitting is begun: the invigilator has it made when the candidate sits before them,
 * and says it aloud. Only a keyed digest is kept; a new one takes the place of the one before.
 */
import { createHmac, randomInt, timingSafeEqual } from 'node:crypto';
import { fault, ok, type Result } from '#engine/result.ts';
import { append } from '../audit/audit-trail.ts';
import { secret } from '../database/secret.ts';
import type { Database, Db } from '../database/open-database.ts';
import { forget, waitFor } from '../logins/throttle.ts';
import { type Act, doerOf } from '../people/member.ts';
import { happen, type SittingFault, withSitting } from './decide-sitting.ts';

/** Letters that are not taken for one another, nor for a figure. */
const letters = 'ABCDEFGHJKLMNPQRSTUVWXYZ';
const length = 6;

const tries = { most: 5, seconds: 300 };

const plain = (code: string): string => code.toUpperCase().replace(/[^A-Z]/g, '');

const digestOf = async (db: Db, sitting: string, code: string): Promise<string> =>
  createHmac('sha256', await secret(db, 'start codes'))
    .update(`${sitting}/${plain(code)}`)
    .digest('hex');

/** A new code, told this once: `KQB-WRT`. */
export async function makeStartCode(
  database: Database,
  act: Act,
  id: string,
): Promise<Result<string, SittingFault>> {
  const code = Array.from({ length }, () => letters[randomInt(letters.length)]).join('');
  const digest = await digestOf(database.db, id, code);
  return withSitting(database, act, id, async (trx, { row, sitting }) => {
    if (row.person_id === act.by.person) return fault('by-the-candidate');
    if (sitting.phase !== 'waiting') return fault('opened-already');
    await trx
      .updateTable('sitting')
      .set({ code_digest: digest, code_by: act.by.person })
      .where('id', '=', id)
      .execute();
    await append(trx, doerOf(act), { action: 'make start code', subject: id });
    return ok(code.replace(/(.{3})(?=.)/g, '$1-'));
  });
}

export type EntryFault =
  | { readonly code: SittingFault | 'WRONG_CODE' }
  | { readonly code: 'TOO_OFTEN'; readonly seconds: number };

/** Begins the candidate's own sitting; one that is begun goes on, on whatever device. */
export async function enterCode(
  database: Database,
  act: Act,
  id: string,
  given: string,
): Promise<Result<true, EntryFault>> {
  const { db } = database;
  const key = `start-code/${act.by.person}/${id}`;
  const seconds = await waitFor(db, key, tries, new Date(act.at));
  if (seconds > 0) return fault({ code: 'TOO_OFTEN', seconds });
  const digest = await digestOf(db, id, given);
  const entered = await withSitting(database, act, id, async (trx, known) => {
    const { row, sitting } = known;
    if (row.person_id !== act.by.person) return fault('ABSENT');
    if (sitting.phase === 'open') return ok('open' as const);
    const isRight =
      row.code_digest !== null && row.code_by !== null && isSame(row.code_digest, digest);
    if (!isRight) return ok('wrong' as const);
    const begun = { kind: 'opened', by: row.code_by } as const;
    const taken = await happen(trx, act, known, begun, 'begin sitting');
    return taken.ok ? ok('open' as const) : taken;
  });
  if (!entered.ok) return fault({ code: entered.error });
  if (entered.value === 'wrong') return fault({ code: 'WRONG_CODE' });
  await forget(db, key);
  return ok(true);
}

const isSame = (a: string, b: string): boolean =>
  a.length === b.length && timingSafeEqual(Buffer.from(a), Buffer.from(b));
