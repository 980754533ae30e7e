/** Photos of a check: kept clean and in bounds, looked at by whoever may, unchanged once it is signed. */
import { createHash } from 'node:crypto';
import { type CheckSheet, photosIn } from '#engine/exam/check-sheet.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { isUuid } from '#engine/uuid.ts';
import { may } from '../access/rights.ts';
import type { Db } from '../database/open-database.ts';
import type { Act, Member } from '../people/member.ts';
import { cleanImage } from './image/clean-image.ts';
import type { ImageFault } from './image/cleaned.ts';

/** Of one check, included. */
export const mostPhotos = 24;
/** Of one photo in bytes, included, as it is sent. */
export const largestPhoto = 1536 * 1024;

export type PhotoFault = ImageFault | 'ABSENT' | 'SIGNED' | 'TOO_MANY' | 'TOO_LARGE';

type Sent = { readonly check: string; readonly id: string; readonly bytes: Uint8Array };

/** Keeps one; sent again by the same id it is kept once. */
export async function keepPhoto(
  db: Db,
  { by, at }: Act,
  { check, id, bytes: sent }: Sent,
): Promise<Result<'now' | 'before', PhotoFault>> {
  if (sent.length > largestPhoto) return fault('TOO_LARGE');
  const clean = cleanImage(sent);
  if (!clean.ok) return clean;
  if (!isUuid(id)) return fault('ABSENT');
  const { type, bytes } = clean.value;
  return db.transaction().execute(async (trx) => {
    const isUnsigned = await holdUnsigned(trx, by.person, check);
    const known = await trx
      .selectFrom('check_photo')
      .select(['id', 'check_id'])
      .where('check_id', '=', check)
      .execute();
    if (known.some((photo) => photo.id === id)) return ok('before');
    if (!isUnsigned) return fault((await isTheirs(trx, by.person, check)) ? 'SIGNED' : 'ABSENT');
    if (known.length >= mostPhotos) return fault('TOO_MANY');
    const { numInsertedOrUpdatedRows } = await trx
      .insertInto('check_photo')
      .values({
        id,
        check_id: check,
        company_id: by.company,
        type,
        bytes,
        size: bytes.length,
        digest: createHash('sha256').update(bytes).digest('hex'),
        kept_at: at,
      })
      .onConflict((conflict) => conflict.column('id').doNothing())
      .executeTakeFirst();
    return numInsertedOrUpdatedRows ? ok('now') : fault('ABSENT');
  });
}

/** Locks an examiner's check until the end, so that photo and signature come one after the other. */
const holdUnsigned = async (trx: Db, examiner: string, check: string): Promise<boolean> =>
  (await trx
    .updateTable('hands_on_check')
    .set((row) => ({ place: row.ref('place') }))
    .where('id', '=', check)
    .where('examiner_id', '=', examiner)
    .where('signed_at', 'is', null)
    .returning('id')
    .executeTakeFirst()) !== undefined;

const isTheirs = async (trx: Db, person: string, check: string): Promise<boolean> =>
  (await trx
    .selectFrom('hands_on_check')
    .select('id')
    .where('id', '=', check)
    .where('examiner_id', '=', person)
    .executeTakeFirst()) !== undefined;

export type KeptPhoto = { readonly id: string; readonly digest: string };

/** Takes away what was taken back on the sheet. */
export async function dropTakenBack(trx: Db, check: string, sheet: CheckSheet): Promise<void> {
  const gone = Object.entries(sheet)
    .filter(([name, { says }]) => name.startsWith('photo:') && says === null)
    .map(([name]) => name.slice(6));
  if (gone.length === 0) return;
  await trx
    .deleteFrom('check_photo')
    .where('check_id', '=', check)
    .where('id', 'in', gone)
    .execute();
}

/** To be signed: those on the sheet, each with its digest; a fault with those that did not arrive. */
export async function photosToSign(
  trx: Db,
  { id: check, examiner }: { readonly id: string; readonly examiner: string },
  sheet: CheckSheet,
): Promise<Result<readonly KeptPhoto[], readonly string[]>> {
  await holdUnsigned(trx, examiner, check);
  const wanted = photosIn(sheet).map(({ id }) => id);
  await trx
    .deleteFrom('check_photo')
    .where('check_id', '=', check)
    .where('id', 'not in', ['', ...wanted])
    .execute();
  const kept = await trx
    .selectFrom('check_photo')
    .select(['id', 'digest'])
    .where('check_id', '=', check)
    .orderBy('id')
    .execute();
  const here = new Set(kept.map(({ id }) => id));
  const missing = wanted.filter((id) => !here.has(id));
  return missing.length > 0 ? fault(missing) : ok(kept);
}

/** One of a check, with whose hands it shows. */
export const photo = (db: Db, company: string, check: string, id: string) =>
  db
    .selectFrom('check_photo')
    .innerJoin('hands_on_check', 'hands_on_check.id', 'check_photo.check_id')
    .select(['type', 'bytes', 'person_id as candidate', 'examiner_id as examiner'])
    .where('check_photo.company_id', '=', company)
    .where('check_id', '=', check)
    .where('check_photo.id', '=', id)
    .executeTakeFirst();

/** For its examiner, for whom it shows, and for who may see applications; undefined for anybody else. */
export async function photoFor(
  db: Db,
  { company, person, roles }: Member,
  check: string,
  id: string,
) {
  const found = await photo(db, company, check, id);
  const isTheirs = found?.candidate === person || found?.examiner === person;
  return isTheirs || may(roles, 'see applications') ? found : undefined;
}
