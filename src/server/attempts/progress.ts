/** How far each person is with each piece of assigned work, kept up with every attempt. */
import type { Db } from '../database/open-database.ts';
import type { Ready } from './ready.ts';
import type { Marked } from './marking.ts';
import type { Work } from './work.ts';

/** To be called in the transaction that keeps the attempts, with none that was kept before. */
export async function add(trx: Db, news: readonly Ready[]): Promise<void> {
  for (const { by, work, marked, at } of news) {
    if (!work) continue;
    const good = isGood(work, marked) ? 1 : 0;
    await trx
      .insertInto('progress')
      .values({
        work_id: work.id,
        person_id: by.person,
        tries: 1,
        good,
        best: marked.score,
        last_at: at,
        passed_at: good >= work.count ? at : null,
        missed: 1 - good,
      })
      .onConflict((conflict) =>
        conflict.columns(['work_id', 'person_id']).doUpdateSet((eb) => {
          const best = eb.ref('progress.best');
          const isBetter = eb(best, '>', eb.ref('excluded.best'));
          const all = eb('progress.good', '+', good);
          const passed = eb.case().when(all, '>=', work.count).then(at).end();
          return {
            tries: eb('progress.tries', '+', 1),
            good: all,
            best: eb.case().when(isBetter).then(best).else(eb.ref('excluded.best')).end(),
            last_at: at,
            // The first pass counts.
            passed_at: eb.fn.coalesce('progress.passed_at', passed),
            missed: good === 1 ? 0 : eb('progress.missed', '+', 1),
          };
        }),
      )
      .execute();
  }
}

/** Good enough for the work: a wall, too, only where it need not be opened again. */
export const isGood = (
  work: Work,
  { score, outcome }: Pick<Marked, 'score' | 'outcome'>,
): boolean => score >= work.pass && !['rework', 'tear-out'].includes(outcome);

/**
 * It is to be done once more: as if nothing of it had been good, with as many more tries as it takes good
 * ones. To be called in the transaction that keeps the decision.
 */
export async function askAgain(
  trx: Db,
  { work, person, at }: { readonly work: string; readonly person: string; readonly at: string },
): Promise<void> {
  await trx
    .updateTable('progress')
    .set((eb) => ({
      passed_at: null,
      good: 0,
      asked_again_at: at,
      missed: 0,
      extra: eb(
        'extra',
        '+',
        eb.selectFrom('assignment_work').select('count').where('id', '=', work),
      ),
    }))
    .where('work_id', '=', work)
    .where('person_id', '=', person)
    .execute();
}

type Try = {
  readonly work: string;
  readonly marked: Pick<Marked, 'score' | 'outcome'>;
  readonly at: string;
};

/** Works out anew how far a person is from all tries, the earliest first; a pass that was given stays. */
export async function replace(trx: Db, person: string, all: readonly Try[]): Promise<void> {
  for (const [id, tries] of Map.groupBy(all, ({ work }) => work)) {
    const work = await trx
      .selectFrom('assignment_work')
      .select(['id', 'pass', 'count'])
      .where('id', '=', id)
      .executeTakeFirstOrThrow();
    const before = await trx
      .selectFrom('progress')
      .select(['passed_at', 'asked_again_at'])
      .where('work_id', '=', id)
      .where('person_id', '=', person)
      .executeTakeFirst();
    // What came before it was asked for again is no longer as good.
    const since = before?.asked_again_at ?? '';
    const good = tries.filter(({ marked, at }) => at > since && isGood(work, marked));
    const row = {
      tries: tries.length,
      good: good.length,
      best: Math.max(...tries.map(({ marked }) => marked.score)),
      last_at: tries.at(-1)!.at,
      passed_at: before?.passed_at ?? good[work.count - 1]?.at ?? null,
      missed: missedLately(work, tries, since),
    };
    await trx
      .insertInto('progress')
      .values({ work_id: id, person_id: person, ...row })
      .onConflict((conflict) => conflict.columns(['work_id', 'person_id']).doUpdateSet(row))
      .execute();
  }
}

function missedLately(work: Work, tries: readonly Try[], since: string): number {
  const lately = tries.filter(({ at }) => at > since);
  const last = lately.findLastIndex(({ marked }) => isGood(work, marked));
  return lately.length - 1 - last;
}
