/** What may be taken away of a certificate, by its holder and by those who see certificates. */
import { may } from '../access/rights.ts';
import type { Db } from '../database/open-database.ts';
import type { Member } from '../people/member.ts';
import { verifyAddress } from './addresses.ts';
import { lastIssue } from './issues.ts';
import type { OnPaper } from './on-paper.ts';

const rowOf = (db: Db, company: string, certificate: string) =>
  db
    .selectFrom('certificate')
    .innerJoin('company', 'company.id', 'certificate.company_id')
    .select([
      'certificate.person_id as person',
      'certificate.public_id as publicId',
      'certificate.granted_on as grantedOn',
      'certificate.valid_until as validUntil',
      'company.name as issuer',
      'company.is_demo as isDemo',
    ])
    .where('certificate.company_id', '=', company)
    .where('certificate.id', '=', certificate)
    .executeTakeFirst();

/** Undefined for one that is not there, that is not theirs to see, or whose holder was erased. */
export async function paperOf(
  db: Db,
  by: Member,
  certificate: string,
  origin: string,
): Promise<OnPaper | undefined> {
  const row = await rowOf(db, by.company, certificate);
  if (!row || (row.person !== by.person && !may(by.roles, 'see certificates'))) return undefined;
  const issue = await lastIssue(db, certificate);
  return (
    issue && {
      name: issue.name,
      issuer: row.issuer,
      scope: issue.scope,
      passed: issue.evidence,
      grantedOn: row.grantedOn,
      validUntil: row.validUntil,
      issue: issue.number,
      address: verifyAddress(origin, row.publicId),
      isDemo: row.isDemo === 1,
    }
  );
}
