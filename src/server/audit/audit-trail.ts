/**
 * A company's audit trail: entries in a chain, each with the hash of the one before it, so that an entry
 * changed, taken out or put in between breaks the chain from there on. Who can rewrite the whole database
 * can rewrite the whole chain: keep its head (`length` and `hash`) elsewhere to convict that too.
 */
import { createHash } from 'node:crypto';
import { sql } from 'kysely';
import type { Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';

/** What happened, in words of the trade, to what; `detail` holds no more than one needs to know. */
export type Deed = {
  readonly action: string;
  readonly subject: string;
  readonly detail?: Readonly<Record<string, unknown>>;
};

export type Doer = { readonly company: string; readonly actor: string | null; readonly at: string };

type Entry = {
  readonly company_id: string;
  readonly place: number;
  readonly id: string;
  readonly at: string;
  readonly actor: string | null;
  readonly action: string;
  readonly subject: string;
  readonly detail: string;
  readonly previous_hash: string;
};

/** SHA-256 over the fields in a fixed order, as JSON, so that no two entries read the same. */
const hashOf = (entry: Entry): string =>
  createHash('sha256')
    .update(
      JSON.stringify([
        entry.company_id,
        entry.place,
        entry.id,
        entry.at,
        entry.actor,
        entry.action,
        entry.subject,
        entry.detail,
        entry.previous_hash,
      ]),
    )
    .digest('hex');

/** Adds an entry. To be called in the transaction that does the deed, which then stands or falls with it. */
export const append = (trx: Db, doer: Doer, deed: Deed): Promise<void> =>
  appendAll(trx, doer, [deed]);

/** Rows written by one statement: well under the number of values that either database takes. */
const block = 500;

/** Adds entries in their order, as where one act does the same to many. */
export async function appendAll(
  trx: Db,
  { company, actor, at }: Doer,
  deeds: readonly Deed[],
): Promise<void> {
  if (deeds.length === 0) return;
  // Taking the next places locks the company's row: entries of one company come one after another.
  const head = await trx
    .updateTable('company')
    .set({ audit_length: sql`audit_length + ${deeds.length}` })
    .where('id', '=', company)
    .returning(['audit_length', 'audit_hash'])
    .executeTakeFirstOrThrow();
  const before = head.audit_length - deeds.length;
  let hash = head.audit_hash;
  const entries = deeds.map((deed, index) => {
    const entry: Entry = {
      company_id: company,
      place: before + index + 1,
      id: freshId(),
      at,
      actor,
      action: deed.action,
      subject: deed.subject,
      detail: JSON.stringify(deed.detail ?? {}),
      previous_hash: hash,
    };
    hash = hashOf(entry);
    return { ...entry, hash };
  });
  for (let from = 0; from < entries.length; from += block) {
    await trx
      .insertInto('audit_entry')
      .values(entries.slice(from, from + block))
      .execute();
  }
  await trx.updateTable('company').set({ audit_hash: hash }).where('id', '=', company).execute();
}

export type ChainFault = { readonly place: number; readonly what: string };
export type Verification = {
  readonly company: string;
  readonly length: number;
  /** Of the last entry: the head. Empty for a trail without entries. */
  readonly hash: string;
  readonly faults: readonly ChainFault[];
};

const page = 1000;

/** Reads a company's whole trail, a page at a time, and tells every break in the chain. */
export async function verify(db: Db, company: string): Promise<Verification> {
  const head = await db
    .selectFrom('company')
    .select(['audit_length', 'audit_hash'])
    .where('id', '=', company)
    .executeTakeFirstOrThrow();
  const faults: ChainFault[] = [];
  let place = 0;
  let hash = '';
  for (;;) {
    const entries = await db
      .selectFrom('audit_entry')
      .selectAll()
      .where('company_id', '=', company)
      .where('place', '>', place)
      .orderBy('place')
      .limit(page)
      .execute();
    for (const entry of entries) {
      if (entry.place !== place + 1) {
        faults.push({
          place: place + 1,
          what: `Entries ${place + 1} to ${entry.place - 1} are missing.`,
        });
      }
      if (entry.previous_hash !== hash) {
        faults.push({ place: entry.place, what: 'It does not follow from the entry before it.' });
      }
      if (hashOf(entry) !== entry.hash) {
        faults.push({ place: entry.place, what: 'Its content was changed.' });
      }
      ({ place, hash } = entry);
    }
    if (entries.length < page) break;
  }
  if (place !== head.audit_length || hash !== head.audit_hash) {
    faults.push({
      place,
      what: `The trail ends at entry ${place}, and should end at entry ${head.audit_length}.`,
    });
  }
  return { company, length: place, hash, faults };
}
