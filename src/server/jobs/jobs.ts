/** Jobs of a company: written down, kept, closed, and whom was sent. Each deed stands in the audit trail. */
import { fault, ok, type Result } from '#engine/result.ts';
import { append } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';
import { named } from '../people/crew-list.ts';
import { type Act, doerOf } from '../people/member.ts';
import { type GivenJob, type JobFault, jobFrom } from './job-form.ts';

export type JobRole = {
  readonly id: string;
  readonly title: string;
  readonly count: number;
  readonly needs: readonly string[];
};

export type Job = {
  readonly id: string;
  readonly title: string;
  readonly place: string;
  readonly startsOn: string;
  readonly endsOn: string;
  readonly note: string | null;
  readonly closedAt: string | null;
  readonly roles: readonly JobRole[];
  /** By crew, in miles. */
  readonly travel: ReadonlyMap<string, number>;
  /** By person, the role they were sent in. */
  readonly sent: ReadonlyMap<string, string>;
};

/**
 * Keeps a job under the id that was made for it where it was written; the same id a second time changes
 * nothing, as when an answer was lost.
 */
export async function keep(
  db: Db,
  act: Act,
  schemes: readonly string[],
  id: string,
  given: GivenJob,
): Promise<Result<string, JobFault>> {
  const read = jobFrom(given, schemes);
  if (!read.ok) return read;
  const { company, person } = act.by;
  const { roles, travel, startsOn, endsOn, ...rest } = read.value;
  return inTurn(db, company, async (trx) => {
    const before = await trx.selectFrom('job').select('company_id').where('id', '=', id).execute();
    if (before[0]) return before[0].company_id === company ? ok(id) : fault('ABSENT');
    const there = await named(
      trx,
      company,
      travel.map(({ crew }) => crew),
    );
    const crews = new Set(there.map(({ id: crew }) => crew));
    if (travel.some(({ crew }) => !crews.has(crew))) return fault('UNKNOWN_CREW');
    await trx
      .insertInto('job')
      .values({
        ...rest,
        id,
        company_id: company,
        starts_on: startsOn,
        ends_on: endsOn,
        made_by: person,
        made_at: act.at,
        closed_at: null,
      })
      .execute();
    const rows = roles.map(({ needs, ...role }, place) => ({
      ...role,
      id: freshId(),
      job_id: id,
      place,
      needs: JSON.stringify([...new Set(needs)]),
    }));
    await trx.insertInto('job_role').values(rows).execute();
    if (travel.length > 0) {
      await trx
        .insertInto('job_travel')
        .values(travel.map(({ crew, miles }) => ({ job_id: id, crew_id: crew, distance: miles })))
        .execute();
    }
    await append(trx, doerOf(act), { action: 'plan job', subject: id });
    return ok(id);
  });
}

const columns = [
  'id',
  'title',
  'place',
  'starts_on as startsOn',
  'ends_on as endsOn',
  'note',
  'closed_at as closedAt',
] as const;

export type JobRow = Omit<Job, 'roles' | 'travel' | 'sent'>;

/** Those that are not over, the soonest first; or those that are over or closed, the last first. */
export function list(
  db: Db,
  company: string,
  today: string,
  when: 'ahead' | 'past',
  most = 50,
): Promise<readonly JobRow[]> {
  const all = db.selectFrom('job').select(columns).where('company_id', '=', company).limit(most);
  if (when === 'ahead') {
    return all
      .where('closed_at', 'is', null)
      .where('ends_on', '>=', today)
      .orderBy('starts_on')
      .orderBy('id')
      .execute();
  }
  return all
    .where((where) => where.or([where('closed_at', 'is not', null), where('ends_on', '<', today)]))
    .orderBy('starts_on', 'desc')
    .orderBy('id', 'desc')
    .execute();
}

export async function one(db: Db, company: string, id: string): Promise<Job | undefined> {
  const job = await db
    .selectFrom('job')
    .select(columns)
    .where('company_id', '=', company)
    .where('id', '=', id)
    .executeTakeFirst();
  if (!job) return undefined;
  const roles = await db
    .selectFrom('job_role')
    .select(['id', 'title', 'count', 'needs'])
    .where('job_id', '=', id)
    .orderBy('place')
    .execute();
  const travel = await db.selectFrom('job_travel').selectAll().where('job_id', '=', id).execute();
  const sent = await db.selectFrom('job_person').selectAll().where('job_id', '=', id).execute();
  return {
    ...job,
    roles: roles.map(({ needs, ...role }) => ({ ...role, needs: JSON.parse(needs) as string[] })),
    travel: new Map(travel.map(({ crew_id, distance }) => [crew_id, distance])),
    sent: new Map(sent.map(({ person_id, role_id }) => [person_id, role_id])),
  };
}

/** Nobody plans it any more, and whoever was sent is free again. */
export async function close(db: Db, act: Act, id: string): Promise<Result<true, JobFault>> {
  const { company } = act.by;
  return inTurn(db, company, async (trx) => {
    const closed = await trx
      .updateTable('job')
      .set({ closed_at: act.at })
      .where('company_id', '=', company)
      .where('id', '=', id)
      .where('closed_at', 'is', null)
      .returning('id')
      .execute();
    if (closed.length === 0) return fault('ABSENT');
    await append(trx, doerOf(act), { action: 'close job', subject: id });
    return ok(true);
  });
}
