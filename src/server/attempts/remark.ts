/**
 * Marks all attempts again, as after the content was mended. Old marks stay; the new ones stand beside
 * them with the revision that made them, and what the attempts add up to is worked out anew. A person at
 * a time, each in one transaction: it can be stopped, and goes on where it stopped. What was passed once
 * stays passed: nobody loses it to a correction.
 */
import type { Content } from '#engine/compile/content.ts';
import type { AttemptFault } from '#engine/marking/attempt-file.ts';
import type { Database, Db } from '../database/open-database.ts';
import { markRow } from './attempts.ts';
import { keptAgain } from './kept-again.ts';
import { type Marked, markSent } from './marking.ts';
import * as progress from './progress.ts';
import type { Ready } from './ready.ts';
import * as standings from './standings.ts';

type Said = { readonly score: number; readonly outcome: string };

export type Change = {
  readonly attempt: string;
  readonly about: string;
  readonly before: Said;
  readonly after: Said;
};

/** An attempt that today's content cannot read: its old mark stands. */
export type Unreadable = { readonly attempt: string; readonly faults: readonly AttemptFault[] };

export type RemarkReport = {
  readonly revision: string;
  readonly people: number;
  readonly attempts: number;
  /** Those that had no mark of this revision before. */
  readonly marked: number;
  readonly changes: readonly Change[];
  readonly unreadable: readonly Unreadable[];
};

type How = {
  readonly at: string;
  /** Looks, and writes nothing. */
  readonly isTrial?: boolean;
  /** Told after each person. */
  readonly tell?: (done: number, all: number) => void;
};

export async function remark(
  { db, kind }: Database,
  content: Content,
  { at, isTrial = false, tell }: How,
): Promise<RemarkReport> {
  const people = await db
    .selectFrom('standing')
    .select('person_id')
    .distinct()
    .orderBy('person_id')
    .execute();
  const report = {
    attempts: 0,
    marked: 0,
    changes: [] as Change[],
    unreadable: [] as Unreadable[],
  };
  for (const [done, { person_id: person }] of people.entries()) {
    const looked = await db.transaction().execute(async (trx) => {
      if (kind === 'postgres') await hold(trx, person);
      const found = await lookAt(trx, content, person);
      if (!isTrial) await write(trx, person, found, at);
      return found;
    });
    report.attempts += looked.length;
    for (const one of looked) {
      if (!one.marked.ok) report.unreadable.push({ attempt: one.row.id, faults: one.marked.error });
      else if (one.isNew) {
        report.marked += 1;
        if (isChanged(one.row, one.marked.value))
          report.changes.push(changeOf(one.row, one.marked.value));
      }
    }
    tell?.(done + 1, people.length);
  }
  return { revision: content.revision, people: people.length, ...report };
}

/** As whoever keeps an attempt does: one at a time adds to a person's standing. */
const hold = (trx: Db, person: string) =>
  trx.selectFrom('person').select('id').where('id', '=', person).forNoKeyUpdate().execute();

/** A person's attempts in the order they came, each with its latest mark and today's. */
async function lookAt(trx: Db, content: Content, person: string) {
  const rows = await trx
    .selectFrom('attempt')
    .innerJoin('mark', 'mark.attempt_id', 'attempt.id')
    .selectAll('attempt')
    .select(['mark.score', 'mark.outcome', 'mark.content_revision as marked_by', 'mark.marked_at'])
    .where('person_id', '=', person)
    .orderBy('attempt.received_at')
    .orderBy('attempt.id')
    .orderBy('mark.marked_at', 'desc')
    .execute();
  const byAttempt = Map.groupBy(rows, ({ id }) => id);
  return [...byAttempt.values()].map((marks) => {
    const row = marks[0]!;
    const marked = markSent(content, keptAgain(row));
    const isNew = !marks.some(({ marked_by }) => marked_by === content.revision);
    return { row, marked, isNew };
  });
}

type Looked = Awaited<ReturnType<typeof lookAt>>;

async function write(trx: Db, person: string, looked: Looked, at: string): Promise<void> {
  const fresh = looked.flatMap(({ row, marked, isNew }) =>
    isNew && marked.ok ? [markRow(row.id, marked.value, at)] : [],
  );
  for (let from = 0; from < fresh.length; from += 500) {
    await trx
      .insertInto('mark')
      .values(fresh.slice(from, from + 500))
      .execute();
  }
  const ready = looked.flatMap(({ row, marked }): readonly Omit<Ready, 'work'>[] =>
    marked.ok
      ? [
          {
            id: row.id,
            by: { company: row.company_id, person },
            kind: row.kind,
            marked: marked.value,
            at: row.received_at,
          },
        ]
      : [],
  );
  await standings.replace(trx, person, ready);
  const workOf = new Map(looked.map(({ row }) => [row.id, row.work_id]));
  await progress.replace(
    trx,
    person,
    ready.flatMap((one) => {
      const work = workOf.get(one.id);
      return work ? [{ work, marked: one.marked, at: one.at }] : [];
    }),
  );
}

const isChanged = (before: Said, { score, outcome }: Marked): boolean =>
  before.score !== score || before.outcome !== outcome;

const changeOf = ({ id, about, score, outcome }: Looked[number]['row'], after: Marked): Change => ({
  attempt: id,
  about,
  before: { score, outcome },
  after: { score: after.score, outcome: after.outcome },
});
