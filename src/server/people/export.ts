/** Everything that is kept about one person, for them to have. Secrets and digests are left out. */
import type { Db } from '../database/open-database.ts';
import { certificationOf } from './export-certification.ts';
import { written } from './export-rows.ts';
import { hasEmail } from '../logins/logins.ts';

async function loginOf(db: Db, login: string) {
  const row = await db
    .selectFrom('login')
    .select(['name', 'email', 'username', 'createdAt'])
    .where('id', '=', login)
    .executeTakeFirst();
  if (!row) return null;
  const sessions = await db
    .selectFrom('session')
    .select(['createdAt', 'updatedAt', 'expiresAt', 'ipAddress', 'userAgent'])
    .where('userId', '=', login)
    .execute();
  const [known] = written([{ ...row, email: hasEmail(row.email) ? row.email : null }]);
  return { ...known, sessions: written(sessions) };
}

const decisionsOn = (db: Db, person: string) =>
  db
    .selectFrom('decision')
    .innerJoin('attempt', 'attempt.id', 'decision.attempt_id')
    .selectAll('decision')
    .where('attempt.person_id', '=', person)
    .orderBy('decided_at');

const decisionsBy = (db: Db, person: string) =>
  db.selectFrom('decision').selectAll().where('decided_by', '=', person).orderBy('decided_at');

async function workOf(db: Db, person: string) {
  const attempts = db.selectFrom('attempt').selectAll().where('person_id', '=', person);
  const marks = db
    .selectFrom('mark')
    .innerJoin('attempt', 'attempt.id', 'mark.attempt_id')
    .selectAll('mark')
    .where('attempt.person_id', '=', person);
  const standings = db.selectFrom('standing').selectAll().where('person_id', '=', person);
  const progress = db.selectFrom('progress').selectAll().where('person_id', '=', person);
  return {
    attempts: written(await attempts.orderBy('received_at').execute()),
    marks: written(await marks.orderBy('mark.marked_at').execute()),
    standings: written(await standings.execute()),
    progress: written(await progress.execute()),
  };
}

async function trailOf(db: Db, company: string, person: string) {
  const entries = db
    .selectFrom('audit_entry')
    .select(['place', 'at', 'actor', 'action', 'subject', 'detail'])
    .where('company_id', '=', company)
    .orderBy('place');
  // An entry about something else may still name them in what it says.
  const about = entries.where((where) =>
    where.or([where('subject', '=', person), where('detail', 'like', `%${person}%`)]),
  );
  return {
    about: written(await about.execute()),
    by: written(await entries.where('actor', '=', person).execute()),
  };
}

/** Undefined for somebody who is not of that company. */
export async function exportPerson(db: Db, company: string, person: string) {
  const row = await db
    .selectFrom('person')
    .selectAll()
    .where('company_id', '=', company)
    .where('id', '=', person)
    .executeTakeFirst();
  if (!row) return undefined;
  const { login_id, search: _search, ...details } = row;
  const crew = await db
    .selectFrom('crew')
    .select(['id', 'name'])
    .where('id', '=', row.crew_id ?? '')
    .executeTakeFirst();
  const cards = await db
    .selectFrom('crew_card')
    .select(['id', 'made_by', 'made_at', 'expires_at', 'used_at', 'revoked_at'])
    .where('person_id', '=', person)
    .orderBy('made_at')
    .execute();
  const given = await db
    .selectFrom('assignment_for')
    .innerJoin('assignment', 'assignment.id', 'assignment_for.assignment_id')
    .selectAll('assignment')
    .where('assignment_for.person_id', '=', person)
    .execute();
  const sent = await db
    .selectFrom('job_person')
    .innerJoin('job', 'job.id', 'job_person.job_id')
    .select(['job.id', 'job.title', 'job.place', 'starts_on', 'ends_on', 'sent_at'])
    .where('job_person.person_id', '=', person)
    .orderBy('starts_on')
    .execute();
  const tokens = await db
    .selectFrom('api_token')
    .select(['id', 'label', 'scopes', 'made_at', 'expires_at', 'revoked_at', 'last_used_on'])
    .where('made_by', '=', person)
    .orderBy('made_at')
    .execute();
  return {
    person: details,
    crew: crew ?? null,
    login: login_id === null ? null : await loginOf(db, login_id),
    cards,
    assignments: given,
    jobs: sent,
    tokens,
    ...(await workOf(db, person)),
    ...(await certificationOf(db, person)),
    decisions: {
      about: written(await decisionsOn(db, person).execute()),
      by: written(await decisionsBy(db, person).execute()),
    },
    audit: await trailOf(db, company, person),
  };
}
