import type { IsoDate } from '#engine/calendar.ts';
import { scopeOf } from '#engine/certificate/scope.ts';
import type { Content } from '#engine/compile/content.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import { append } from '../audit/audit-trail.ts';
import type { Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';
import { type Act, doerOf } from '../people/member.ts';
import { record } from './events.ts';
import { addIssue, passedParts } from './issues.ts';
import { freshPublicId } from './public-id.ts';

/** What a decision grants. */
export type Grant = {
  readonly person: string;
  readonly scheme: Scheme;
  /** The decision, already written; null for a certificate that none of this company's stands behind. */
  readonly ruling: string | null;
  readonly grantedOn: IsoDate;
  readonly validUntil: IsoDate;
  /** The certificate that it goes on from. */
  readonly renews: string | null;
};

/**
 * Writes the certificate of a grant with its history, its first issue and the audit entry, and returns
 * its id. To be called in the transaction that writes the decision, which then stands or falls with it:
 * granting a ruling a second time changes nothing.
 */
export async function grantCertificate(
  trx: Db,
  act: Act,
  { methods }: Pick<Content, 'methods'>,
  grant: Grant,
): Promise<string> {
  const { company } = act.by;
  const before = grant.ruling === null ? undefined : await grantedBy(trx, company, grant.ruling);
  if (before !== undefined) return before;
  const { name } = await trx
    .selectFrom('person')
    .select('name')
    .where('company_id', '=', company)
    .where('id', '=', grant.person)
    .executeTakeFirstOrThrow();
  const id = freshId();
  await trx
    .insertInto('certificate')
    .values({
      id,
      company_id: company,
      person_id: grant.person,
      scheme: grant.scheme.id,
      ruling_id: grant.ruling,
      granted_on: grant.grantedOn,
      valid_until: grant.validUntil,
      state: 'in-force',
      public_id: freshPublicId(),
      made_at: act.at,
    })
    .execute();
  await addIssue(
    trx,
    { company, certificate: id, at: act.at },
    {
      number: 1,
      name,
      scope: scopeOf(grant.scheme, methods),
      evidence: await passedParts(trx, grant.ruling),
    },
  );
  await record(trx, doerOf(act), id, { kind: 'granted', reason: '' });
  await append(trx, doerOf(act), {
    action: 'grant certificate',
    subject: id,
    detail: { person: grant.person, scheme: grant.scheme.id, until: grant.validUntil },
  });
  if (grant.renews !== null) await renewed(trx, act, grant.renews, id);
  return id;
}

async function grantedBy(trx: Db, company: string, ruling: string): Promise<string | undefined> {
  const row = await trx
    .selectFrom('certificate')
    .select('id')
    .where('company_id', '=', company)
    .where('ruling_id', '=', ruling)
    .executeTakeFirst();
  return row?.id;
}

/** The one before stays as it is to its own end; it only says that another goes on from it. */
async function renewed(trx: Db, act: Act, before: string, by: string): Promise<void> {
  const { numUpdatedRows } = await trx
    .updateTable('certificate')
    .set({ replaced_by: by })
    .where('company_id', '=', act.by.company)
    .where('id', '=', before)
    .where('replaced_by', 'is', null)
    .executeTakeFirst();
  if (numUpdatedRows > 0n) await record(trx, doerOf(act), before, { kind: 'renewed', reason: '' });
}
