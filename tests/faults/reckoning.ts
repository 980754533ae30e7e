/** What the records hold against what was acknowledged, and what they add up to against a recomputation. */
import { expect } from 'vitest';
import { content } from '../server/attempts/kept.ts';
import { markSent } from '#server/attempts/marking.ts';
import { isGood } from '#server/attempts/progress.ts';
import { replace } from '#server/attempts/standings.ts';
import type { Database, Db } from '#server/database/open-database.ts';
import { checkRecords } from '#server/operations/records-check.ts';
import type { Sent } from './senders.ts';
import type { Company } from './signed-in.ts';

const standingsOf = async (db: Db, company: string) => {
  const rows = await db
    .selectFrom('standing')
    .select(['person_id', 'kind', 'about', 'attempts', 'best', 'last_at', 'tally'])
    .where('company_id', '=', company)
    .orderBy('person_id')
    .execute();
  // The order of names in a tally is that of arrival.
  return rows.map((row) => ({ ...row, tally: JSON.parse(row.tally) as unknown }));
};

async function markedOf(db: Db, company: string, sent: ReadonlyMap<string, Sent>) {
  const rows = await db
    .selectFrom('attempt')
    .select(['id', 'person_id', 'work_id', 'kind', 'received_at'])
    .where('company_id', '=', company)
    .orderBy('received_at')
    .execute();
  return rows.map((row) => {
    const { kept } = sent.get(row.id)!.submission;
    const marked = markSent(content, { id: row.id, work: undefined, kind: 'takeoff', kept });
    if (!marked.ok) throw new Error('It was marked before.');
    const by = { company, person: row.person_id };
    return {
      id: row.id,
      by,
      kind: row.kind,
      marked: marked.value,
      at: row.received_at,
      work: row.work_id,
    };
  });
}

export async function reckon(
  records: Database,
  { company, apprentices, work }: Company,
  acknowledged: ReadonlyMap<string, Sent>,
): Promise<void> {
  const { db } = records;
  const kept = await db
    .selectFrom('attempt')
    .select(['id', 'person_id'])
    .where('company_id', '=', company)
    .execute();
  const ids = new Set(kept.map(({ id }) => id));
  expect(
    [...acknowledged.keys()].filter((id) => !ids.has(id)),
    'lost',
  ).toEqual([]);
  expect(
    kept.filter(({ id }) => !acknowledged.has(id)),
    'kept and never sent',
  ).toEqual([]);
  for (const { id, person_id } of kept) expect(acknowledged.get(id)?.by.person).toBe(person_id);
  const marks = await db
    .selectFrom('mark')
    .innerJoin('attempt', 'attempt.id', 'mark.attempt_id')
    .select('attempt_id')
    .where('attempt.company_id', '=', company)
    .execute();
  expect(marks.map(({ attempt_id }) => attempt_id).sort(), 'marks').toEqual([...ids].sort());

  const all = await markedOf(db, company, acknowledged);
  const progress = await db
    .selectFrom('progress')
    .selectAll()
    .where('work_id', '=', work)
    .execute();
  const task = { id: work, pass: 80, count: 3 };
  for (const { person } of apprentices) {
    const theirs = all.filter((one) => one.by.person === person && one.work === work);
    const good = theirs.filter(({ marked }) => isGood(task, marked)).length;
    const row = progress.find(({ person_id }) => person_id === person);
    expect({ tries: row?.tries ?? 0, good: row?.good ?? 0 }, 'progress').toEqual({
      tries: theirs.length,
      good,
    });
  }

  const standings = await standingsOf(db, company);
  await db.transaction().execute(async (trx) => {
    for (const { person } of apprentices) {
      await replace(
        trx,
        person,
        all.filter(({ by }) => by.person === person),
      );
    }
  });
  expect(standings, 'standings').toEqual(await standingsOf(db, company));
  expect((await checkRecords(records)).faults).toEqual([]);
}
