/** What verifiers fetch of this server: the profile of an issuer, its DID document, and the keys. */
import { issuerProfile } from '#engine/credential/credential.ts';
import { type PublicKey, toMultikey } from '#engine/credential/public-key.ts';
import type { Db } from '../database/open-database.ts';
import { issuerOf, keyAddress } from './addresses.ts';
import { find, list } from './signing-keys.ts';

const asJwk = (id: string, key: PublicKey) => ({ ...key, kid: id, alg: 'EdDSA', use: 'sig' });

/**
 * A JWK Set (RFC 7517, 2015, section 5, which lets it say more): every key that ever signed here, named by
 * its thumbprint, and the origin under which credentials name them.
 */
export const keySet = async (db: Db, origin: string) => ({
  origin,
  keys: (await list(db)).map(({ id, key }) => asJwk(id, key)),
});

export async function oneKey(db: Db, id: string) {
  const key = await find(db, id);
  return key && asJwk(id, key);
}

const companyNamed = (db: Db, company: string) =>
  db.selectFrom('company').select('name').where('id', '=', company).executeTakeFirst();

export async function issuerDocument(db: Db, origin: string, company: string) {
  const row = await companyNamed(db, company);
  if (!row) return undefined;
  const context = 'https://purl.imsglobal.org/spec/ob/v3p0/context-3.0.3.json';
  return {
    '@context': [context],
    ...issuerProfile({ ...issuerOf(origin, company), name: row.name }),
  };
}

/** The document of the issuer's did:web (W3C Decentralized Identifiers 1.0 and Controlled Identifiers 1.0). */
export async function didDocument(db: Db, origin: string, company: string) {
  if (!(await companyNamed(db, company))) return undefined;
  const { id, url } = issuerOf(origin, company);
  const keys = await list(db);
  const names = keys.map((key) => keyAddress(origin, key.id));
  return {
    '@context': ['https://www.w3.org/ns/did/v1', 'https://w3id.org/security/multikey/v1'],
    id,
    alsoKnownAs: id === url ? [] : [url],
    verificationMethod: keys.map((key) => ({
      id: keyAddress(origin, key.id),
      type: 'Multikey',
      controller: id,
      publicKeyMultibase: toMultikey(key.key),
    })),
    assertionMethod: names,
  };
}
