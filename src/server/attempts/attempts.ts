/** Attempts as they are kept: once, for ever, each with its mark; and what they add up to. */
import type { Db } from '../database/open-database.ts';
import type { Kind } from '../database/kind.ts';
import type { Marked } from './marking.ts';
import * as progress from './progress.ts';
import * as standings from './standings.ts';
import type { Ready } from './ready.ts';

/** `kept` now, kept `before`, or somebody else's. */
export type Keeping = 'kept' | 'before' | 'not yours';

/**
 * Keeps many in one transaction: all of them, or none where it fails. One that is there already changes
 * nothing. Each answer stands at its attempt's place.
 */
export async function keep(
  trx: Db,
  kind: Kind,
  batch: readonly Ready[],
): Promise<readonly Keeping[]> {
  if (kind === 'postgres') await takeTurns(trx, batch);
  const made = await trx
    .insertInto('attempt')
    .values(
      batch.map(({ id, by, kind: what, work, marked, at }) => ({
        id,
        company_id: by.company,
        person_id: by.person,
        work_id: work?.id ?? null,
        kind: what,
        about: marked.about,
        played: JSON.stringify(marked.played),
        finished_at: marked.finishedAt,
        received_at: at,
        content_revision: marked.contentRevision,
        sheet_revision: marked.sheetRevision,
      })),
    )
    .onConflict((conflict) => conflict.column('id').doNothing())
    .returning('id')
    .execute();
  const fresh = new Set(made.map(({ id }) => id));
  const keeping = await keepingOf(trx, batch, fresh);
  const news = batch.filter((_, place) => keeping[place] === 'kept');
  if (news.length > 0) {
    await trx
      .insertInto('mark')
      .values(news.map(({ id, marked, at }) => markRow(id, marked, at)))
      .execute();
    await standings.add(trx, news);
    await progress.add(trx, news);
  }
  return keeping;
}

export const markRow = (id: string, marked: Marked, at: string) => ({
  attempt_id: id,
  content_revision: marked.contentRevision,
  sheet_revision: marked.sheetRevision,
  marked_at: at,
  score: marked.score,
  outcome: marked.outcome,
  detail: JSON.stringify(marked.detail),
});

/**
 * Two processes that add to one person's standing would each overwrite the other's: whoever comes first
 * holds the person. Always in the same order, so that nobody waits in a circle.
 */
async function takeTurns(trx: Db, batch: readonly Ready[]): Promise<void> {
  await trx
    .selectFrom('person')
    .select('id')
    .where('id', 'in', [...new Set(batch.map(({ by }) => by.person))])
    .orderBy('id')
    .forNoKeyUpdate()
    .execute();
}

async function keepingOf(
  trx: Db,
  batch: readonly Ready[],
  fresh: ReadonlySet<string>,
): Promise<readonly Keeping[]> {
  const old = batch.filter(({ id }) => !fresh.has(id)).map(({ id }) => id);
  const owners =
    old.length === 0
      ? []
      : await trx
          .selectFrom('attempt')
          .select(['id', 'person_id'])
          .where('id', 'in', old)
          .execute();
  const ownerOf = new Map(owners.map(({ id, person_id }) => [id, person_id]));
  const taken = new Set<string>();
  return batch.map(({ id, by }) => {
    // The same one twice in a batch is new once.
    const isNew = fresh.has(id) && !taken.has(id);
    taken.add(id);
    if (isNew) return 'kept';
    return fresh.has(id) || ownerOf.get(id) === by.person ? 'before' : 'not yours';
  });
}
