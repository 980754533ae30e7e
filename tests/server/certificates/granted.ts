import type { IsoDate } from '#engine/calendar.ts';
import type { SchemeId } from '#engine/exam/scheme.ts';
import { type Grant, grantCertificate } from '#server/certificates/grant.ts';
import { openContent } from '#server/content.ts';
import type { Db } from '#server/database/open-database.ts';
import type { Act } from '#server/people/member.ts';

export const content = openContent();

export const scheme = content.schemes.get('base-of-wall-installer' as SchemeId)!;

/** From 1 May 2030 for three years. */
const usual = {
  scheme,
  ruling: null,
  grantedOn: '2030-05-01' as IsoDate,
  validUntil: '2033-05-01' as IsoDate,
  renews: null,
};

/** A certificate of somebody, by its id. */
export const granted = (
  db: Db,
  act: Act,
  given: { readonly person: string } & Partial<Grant>,
): Promise<string> =>
  db.transaction().execute((trx) => grantCertificate(trx, act, content, { ...usual, ...given }));

export const certificateRow = (db: Db, id: string) =>
  db.selectFrom('certificate').selectAll().where('id', '=', id).executeTakeFirstOrThrow();
