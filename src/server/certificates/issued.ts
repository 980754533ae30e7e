/** A certificate as its signed credential: made when it is first asked for, and kept as it was made. */
import type { IsoDate } from '#engine/calendar.ts';
import { claimsOf } from '#engine/credential/claims.ts';
import { credentialOf } from '#engine/credential/credential.ts';
import { headerFor } from '#engine/credential/header.ts';
import { type Language, languages } from '#engine/text.ts';
import type { Db } from '../database/open-database.ts';
import { issuerOf, keyAddress, verifyAddress } from './addresses.ts';
import { lastIssue } from './issues.ts';
import { presentKey } from './signing-keys.ts';
import { signCompact } from './signature.ts';

/** Where it is signed: under which origin, with the key of which folder. */
export type Signing = { readonly origin: string; readonly keys: string; readonly at: string };

const languageFrom = (text: string | null): Language =>
  languages.find((language) => language === text) ?? 'en';

const certified = (db: Db, certificate: string) =>
  db
    .selectFrom('certificate')
    .innerJoin('company', 'company.id', 'certificate.company_id')
    .innerJoin('person', 'person.id', 'certificate.person_id')
    .select([
      'certificate.public_id',
      'certificate.granted_on',
      'certificate.valid_until',
      'company.id as company',
      'company.name as companyName',
      'person.language',
    ])
    .where('certificate.id', '=', certificate)
    .executeTakeFirst();

/** The last issue's credential as a VC-JWT; undefined where there is none, as for an erased person. */
export async function issued(
  db: Db,
  { origin, keys, at }: Signing,
  certificate: string,
): Promise<string | undefined> {
  const issue = await lastIssue(db, certificate);
  if (!issue || issue.credential !== null) return issue?.credential ?? undefined;
  const row = await certified(db, certificate);
  if (!row) return undefined;
  const { id, key } = await presentKey(db, keys, at);
  const credential = credentialOf(
    {
      address: verifyAddress(origin, row.public_id),
      issue: issue.number,
      name: issue.name,
      issuer: { ...issuerOf(origin, row.company), name: row.companyName },
      scope: issue.scope,
      passed: issue.evidence,
      grantedOn: row.granted_on as IsoDate,
      until: row.valid_until as IsoDate,
    },
    languageFrom(row.language),
  );
  const payload = { ...credential, ...claimsOf(credential) };
  const made = signCompact(key, headerFor(keyAddress(origin, id)), payload);
  await db
    .updateTable('certificate_issue')
    .set({ credential: made, key_id: id })
    .where('certificate_id', '=', certificate)
    .where('number', '=', issue.number)
    .where('credential', 'is', null)
    .execute();
  // Another process may have signed it meanwhile: whoever came first stands.
  return (await lastIssue(db, certificate))?.credential ?? undefined;
}
