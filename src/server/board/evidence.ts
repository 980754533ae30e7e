/** What a person's states on the board rest on: their certificates and the parts they sat. */
import type { Db } from '../database/open-database.ts';

export type KeptCertificate = {
  readonly id: string;
  readonly scheme: string;
  readonly state: string;
  readonly grantedOn: string;
  readonly validUntil: string;
  readonly replacedBy: string | null;
};

export type KeptPart = {
  readonly id: string;
  readonly scheme: string;
  readonly part: string;
  readonly on: string;
  readonly result: string;
};

export type Evidence = {
  readonly certificates: readonly KeptCertificate[];
  readonly parts: readonly KeptPart[];
};

/** The latest first; results that are not released are left out. */
export async function evidence(db: Db, company: string, person: string): Promise<Evidence> {
  const certificates = await db
    .selectFrom('certificate')
    .select([
      'id',
      'scheme',
      'state',
      'granted_on as grantedOn',
      'valid_until as validUntil',
      'replaced_by as replacedBy',
    ])
    .where('company_id', '=', company)
    .where('person_id', '=', person)
    .orderBy('granted_on', 'desc')
    .orderBy('id', 'desc')
    .execute();
  const parts = await db
    .selectFrom('part_result')
    .select(['id', 'scheme', 'part', 'on_date as on', 'result'])
    .where('company_id', '=', company)
    .where('person_id', '=', person)
    .where('released_at', 'is not', null)
    .orderBy('on_date', 'desc')
    .orderBy('id', 'desc')
    .limit(200)
    .execute();
  return { certificates, parts };
}
