import type { Result } from '#engine/result.ts';
import { credentialId } from '#engine/credential/credential.ts';
import { compactFrom } from '#engine/credential/compact.ts';
import {
  type PublishedState,
  type Refusal,
  type Verified,
  verifyCredential,
} from '#engine/credential/verify.ts';
import type { Db } from '../database/open-database.ts';
import { issuerOf, keyAddress, verifyAddress } from './addresses.ts';
import { isSigned } from './signature.ts';
import { list } from './signing-keys.ts';

/** What the records say of the certificate that a credential names; undefined where they know none. */
async function published(
  db: Db,
  origin: string,
  given: Readonly<Record<string, unknown>>,
): Promise<{ readonly issuer: string; readonly state: PublishedState } | undefined> {
  const start = verifyAddress(origin, '');
  const id = String(given['id']);
  const [publicId = ''] = id.startsWith(start) ? id.slice(start.length).split('#') : [];
  const row = await db
    .selectFrom('certificate')
    .leftJoin('certificate_issue', 'certificate_issue.certificate_id', 'certificate.id')
    .select(['certificate.company_id', 'state', 'number'])
    .where('public_id', '=', publicId)
    .where('public_id', '<>', '')
    .orderBy('number', 'desc')
    .limit(1)
    .executeTakeFirst();
  if (!row) return undefined;
  const { id: issuer } = issuerOf(origin, row.company_id);
  if (row.state === 'suspended' || row.state === 'withdrawn') return { issuer, state: row.state };
  const isLast = id === credentialId(verifyAddress(origin, publicId), row.number ?? 0);
  return { issuer, state: isLast ? 'in-force' : 'replaced' };
}

/** Whether a credential is one of this server's, and holds now. */
export async function checkCredential(
  db: Db,
  { origin, at }: { readonly origin: string; readonly at: string },
  text: string,
): Promise<Result<Verified, Refusal>> {
  const compact = compactFrom(text);
  if (!compact.ok) return compact;
  const known = await published(db, origin, compact.value.payload);
  const keys = new Map((await list(db)).map(({ id, key }) => [keyAddress(origin, id), key]));
  return verifyCredential(text, {
    isTrusted: (issuer) => issuer === known?.issuer,
    keyOf: (kid) => keys.get(kid),
    isSigned,
    now: Math.floor(Date.parse(at) / 1000),
    ...(known ? { state: known.state } : {}),
  });
}
