/**
 * The keys of this server. Public halves stay in the records for good, so that what an old key signed is
 * still verified; the private half of the present one is in a file, and that of an old one nowhere.
 */
import { type PublicKey, publicKeyFrom } from '#engine/credential/public-key.ts';
import type { Db } from '../database/open-database.ts';
import { keyIn, replaceKey } from './key-file.ts';
import { freshKey, type PrivateKey, publicOf, thumbprint } from './signature.ts';

export type SigningKey = {
  readonly id: string;
  readonly key: PublicKey;
  readonly madeAt: string;
  readonly retiredAt: string | null;
};

const publish = async (db: Db, key: PrivateKey, at: string): Promise<string> => {
  const id = thumbprint(publicOf(key));
  await db
    .insertInto('signing_key')
    .values({ id, public_key: JSON.stringify(publicOf(key)), made_at: at })
    .onConflict((conflict) => conflict.column('id').doNothing())
    .execute();
  return id;
};

/** What is signed with now, made and published when it is first needed. */
export async function presentKey(
  db: Db,
  folder: string,
  at: string,
): Promise<{ readonly id: string; readonly key: PrivateKey }> {
  const key = keyIn(folder);
  return { id: await publish(db, key, at), key };
}

/** Every key ever used, the latest first. */
export async function list(db: Db): Promise<readonly SigningKey[]> {
  const rows = await db
    .selectFrom('signing_key')
    .selectAll()
    .orderBy('made_at', 'desc')
    .orderBy('id')
    .execute();
  return rows.flatMap(({ id, public_key: text, made_at: madeAt, retired_at: retiredAt }) => {
    const key = publicKeyFrom(JSON.parse(text));
    return key.ok ? [{ id, key: key.value, madeAt, retiredAt }] : [];
  });
}

export async function find(db: Db, id: string): Promise<PublicKey | undefined> {
  const row = await db
    .selectFrom('signing_key')
    .select('public_key')
    .where('id', '=', id)
    .executeTakeFirst();
  const key = row && publicKeyFrom(JSON.parse(row.public_key));
  return key?.ok ? key.value : undefined;
}

/** Signs with another key from now on; what the old one signed is verified as before. */
export async function rotate(
  db: Db,
  folder: string,
  at: string,
): Promise<{ readonly from: string; readonly to: string }> {
  const from = await presentKey(db, folder, at);
  const key = freshKey();
  // Published first: a key that signs is always one that can be verified.
  const to = await publish(db, key, at);
  replaceKey(folder, key);
  await db
    .updateTable('signing_key')
    .set({ retired_at: at })
    .where('id', '=', from.id)
    .where('retired_at', 'is', null)
    .execute();
  return { from: from.id, to };
}
