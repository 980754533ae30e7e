/** What a stranger reads of a certificate by its address: its state, and what its holder allows. */
import type { IsoDate } from '#engine/calendar.ts';
import { isNameShown, shownName } from '#engine/certificate/name-shown.ts';
import type { Scope } from '#engine/certificate/scope.ts';
import { type CertificateState, certificateState, isStanding } from '#engine/certificate/state.ts';
import type { Db } from '../database/open-database.ts';
import { lastIssue } from './issues.ts';
import { isPublicId } from './public-id.ts';

export type Verification = {
  readonly state: CertificateState;
  readonly issuer: string;
  /** Of a company that was invented for looking around: about nobody. */
  readonly isDemo: boolean;
  readonly name: string | null;
  /** Null where the holder was erased from the records. */
  readonly scope: Pick<Scope, 'title' | 'purpose' | 'note' | 'walls' | 'parts'> | null;
  readonly grantedOn: string;
  readonly validUntil: string;
  /** Since when it is suspended or withdrawn. */
  readonly since: string | null;
  /** Which issue counts: a file or paper of another is out of date. */
  readonly issue: number;
};

/** An address that cannot be right is looked up like any other, as one that nobody has. */
const nobodys = 'A'.repeat(22);

const rowOf = (db: Db, publicId: string) =>
  db
    .selectFrom('certificate')
    .innerJoin('company', 'company.id', 'certificate.company_id')
    .select([
      'certificate.id',
      'certificate.state',
      'certificate.granted_on as grantedOn',
      'certificate.valid_until as validUntil',
      'certificate.replaced_by as replacedBy',
      'certificate.name_shown as nameShown',
      'company.name as issuer',
      'company.is_demo as isDemo',
    ])
    .where('public_id', '=', isPublicId(publicId) ? publicId : nobodys)
    .executeTakeFirst();

async function lastChange(db: Db, certificate: string): Promise<string | null> {
  const event = await db
    .selectFrom('certificate_event')
    .select('at')
    .where('certificate_id', '=', certificate)
    .where('kind', 'in', ['suspended', 'withdrawn'])
    .orderBy('at', 'desc')
    .limit(1)
    .executeTakeFirst();
  return event?.at.slice(0, 10) ?? null;
}

const openScope = ({ title, purpose, note, walls, parts }: Scope) => ({
  title,
  purpose,
  note,
  walls,
  parts,
});

export async function verification(
  db: Db,
  publicId: string,
  today: IsoDate,
): Promise<Verification | undefined> {
  const row = await rowOf(db, publicId);
  if (!row || !isStanding(row.state) || !isNameShown(row.nameShown)) return undefined;
  const issue = await lastIssue(db, row.id);
  const state = certificateState(
    {
      standing: row.state,
      until: row.validUntil as IsoDate,
      renewalOpens: issue?.scope.renewalOpens ?? { count: 0, unit: 'days' },
      isRenewed: row.replacedBy !== null,
    },
    today,
  );
  const isStopped = state === 'suspended' || state === 'withdrawn';
  return {
    state,
    issuer: row.issuer,
    isDemo: row.isDemo === 1,
    name: (issue && shownName(issue.name, row.nameShown)) ?? null,
    scope: issue ? openScope(issue.scope) : null,
    grantedOn: row.grantedOn,
    validUntil: row.validUntil,
    since: isStopped ? await lastChange(db, row.id) : null,
    issue: issue?.number ?? 0,
  };
}
