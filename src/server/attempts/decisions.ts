/** What a trainer says of an attempt, and that it is to be done again. Never changed, never taken back. */
import { fault, ok, type Result } from '#engine/result.ts';
import { append } from '../audit/audit-trail.ts';
import type { Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';
import { type Act, doerOf, type Member } from '../people/member.ts';
import * as progress from './progress.ts';

export const decisionKinds = ['comment', 'again'] as const;
export type DecisionKind = (typeof decisionKinds)[number];

export const longestReason = 2000;

/**
 * `EMPTY`, `TOO_LONG`: the words. `ABSENT`: the company has no such attempt. `NO_WORK`: it counts for nothing
 * that was given, so there is nothing to ask for again.
 */
export type DecisionFault = 'EMPTY' | 'TOO_LONG' | 'ABSENT' | 'NO_WORK';

export async function decide(
  db: Db,
  act: Act,
  given: { readonly attempt: string; readonly kind: DecisionKind; readonly reason: string },
): Promise<Result<string, DecisionFault>> {
  const reason = given.reason.normalize('NFC').replace(/\r\n?/g, '\n').trim();
  if (reason === '') return fault('EMPTY');
  if (reason.length > longestReason) return fault('TOO_LONG');
  return db.transaction().execute(async (trx) => {
    const attempt = await trx
      .selectFrom('attempt')
      .select(['id', 'person_id', 'work_id'])
      .where('company_id', '=', act.by.company)
      .where('id', '=', given.attempt)
      .executeTakeFirst();
    if (!attempt) return fault('ABSENT');
    const { work_id: work, person_id: person } = attempt;
    if (given.kind === 'again') {
      if (work === null) return fault('NO_WORK');
      await progress.askAgain(trx, { work, person, at: act.at });
    }
    const id = freshId();
    await trx
      .insertInto('decision')
      .values({
        id,
        company_id: act.by.company,
        attempt_id: attempt.id,
        kind: given.kind,
        reason,
        decided_by: act.by.person,
        decided_at: act.at,
      })
      .execute();
    const action = given.kind === 'again' ? 'ask for attempt again' : 'comment on attempt';
    await append(trx, doerOf(act), {
      action,
      subject: attempt.id,
      detail: { decision: id, person },
    });
    return ok(id);
  });
}

export type SaidOfAttempt = {
  readonly id: string;
  readonly attempt: string;
  readonly about: string;
  readonly kind: DecisionKind;
  readonly reason: string;
  readonly by: string | null;
  readonly at: string;
};

const said = (db: Db, company: string) =>
  db
    .selectFrom('decision')
    .innerJoin('attempt', 'attempt.id', 'decision.attempt_id')
    .leftJoin('person', 'person.id', 'decision.decided_by')
    .select([
      'decision.id',
      'decision.attempt_id as attempt',
      'attempt.about',
      'decision.kind',
      'decision.reason',
      'person.name as by',
      'decision.decided_at as at',
    ])
    .where('decision.company_id', '=', company);

const asSaid = <T extends { readonly kind: string }>(rows: readonly T[]) =>
  rows.map((row) => ({ ...row, kind: row.kind as DecisionKind }));

/** All that was said of an attempt, the latest last; at most a hundred. */
export async function saidOf(
  db: Db,
  company: string,
  attempt: string,
): Promise<readonly SaidOfAttempt[]> {
  const rows = await said(db, company)
    .where('decision.attempt_id', '=', attempt)
    .orderBy('decision.decided_at', 'desc')
    .limit(100)
    .execute();
  return asSaid(rows.toReversed());
}

/** The latest that was said of somebody's attempts, newest first. */
export async function latestSaid(
  db: Db,
  { company, person }: Pick<Member, 'company' | 'person'>,
  most: number,
): Promise<readonly SaidOfAttempt[]> {
  const rows = await said(db, company)
    .where('attempt.person_id', '=', person)
    .orderBy('decision.decided_at', 'desc')
    .limit(most)
    .execute();
  return asSaid(rows);
}
