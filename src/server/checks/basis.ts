/** What checks are judged by, kept with each revision of the content that any was begun with. */
import { checkBundle, type CheckBundle } from '#engine/compile/check-bundle.ts';
import type { Content } from '#engine/compile/content.ts';
import { fromText, toText } from '#engine/compile/transport.ts';
import type { Db } from '../database/open-database.ts';

export type BasisKey = {
  readonly content_revision: string;
  readonly scheme: string;
  readonly part: string;
};

/** Keeps what the content of today says of a part; undefined where it has no such hands-on check. */
export async function keepBasis(
  trx: Db,
  content: Content,
  scheme: string,
  part: string,
): Promise<BasisKey | undefined> {
  const bundle = checkBundle(content, scheme, part);
  if (!bundle) return undefined;
  const key = { content_revision: content.revision, scheme, part };
  await trx
    .insertInto('check_basis')
    .values({ ...key, bundle: toText(bundle) })
    .onConflict((conflict) => conflict.doNothing())
    .execute();
  return key;
}

/** As text, which a browser opens as it is. */
export async function basisText(
  db: Db,
  { content_revision, scheme, part }: BasisKey,
): Promise<string> {
  const row = await db
    .selectFrom('check_basis')
    .select('bundle')
    .where('content_revision', '=', content_revision)
    .where('scheme', '=', scheme)
    .where('part', '=', part)
    .executeTakeFirstOrThrow();
  return row.bundle;
}

export const basisOf = async (db: Db, key: BasisKey): Promise<CheckBundle> =>
  fromText(await basisText(db, key)) as CheckBundle;
