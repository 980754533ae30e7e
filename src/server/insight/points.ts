/** What a person's attempts show of each key point, marked anew with the content of today. */
import { setImmediate } from 'node:timers/promises';
import type { Content } from '#engine/compile/content.ts';
import { markKept } from '#engine/marking/kept-review.ts';
import { mostTried, type PersonPoints, pointsOf, type Tried } from '#engine/tracing/points-of.ts';
import { keptAgain } from '../attempts/kept-again.ts';
import type { Db } from '../database/open-database.ts';

/**
 * Of the last walls built without hints; one that today's content cannot read is passed over. Marks each
 * of them again, since only the steps are kept and not what each showed: measured at 3 to 7 ms a wall, so
 * at most about a second, in pieces.
 */
export async function points(
  db: Db,
  content: Content,
  company: string,
  person: string,
): Promise<PersonPoints> {
  const rows = await db
    .selectFrom('attempt')
    .select(['id', 'kind', 'played', 'work_id', 'finished_at'])
    .where('company_id', '=', company)
    .where('person_id', '=', person)
    .where('kind', '=', 'mockup')
    // Guided ones are among the stored; how it was built stands in what was sent.
    .where('played', 'like', '%"mode":"own"%')
    // As they came; those that came together by the device's own clock.
    .orderBy('received_at', 'desc')
    .orderBy('finished_at', 'desc')
    .orderBy('id', 'desc')
    .limit(mostTried)
    .execute();
  const tried: Tried[] = [];
  for (const row of rows.toReversed()) {
    // So that whoever else asks meanwhile waits for one wall, not for all of them.
    await setImmediate();
    const sent = keptAgain(row);
    if (sent.kind !== 'mockup' || sent.kept.mode !== 'own') continue;
    const marked = markKept(sent.kept, content);
    if (marked.ok) tried.push({ ...marked.value, finished: row.finished_at });
  }
  return pointsOf(tried);
}
