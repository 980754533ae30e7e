/** Whom to send to a job, worked out from the records as they are now, and sending them. */
import { fault, ok, type Result } from '#engine/result.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import { type JobFit, jobFit } from '#engine/job-fit/job-fit.ts';
import { append } from '../audit/audit-trail.ts';
import { dayFrom } from '../board/records-of.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { type Act, doerOf } from '../people/member.ts';
import { candidates, type Search, type Someone } from './candidates.ts';
import type { JobFault } from './job-form.ts';
import { type Job, one } from './jobs.ts';

export type JobPlan = {
  readonly fit: JobFit;
  /** Everybody whom the fit names. */
  readonly people: ReadonlyMap<string, Someone>;
};

/**
 * Those who hold something that is asked are looked at first; only where they do not suffice is everybody,
 * for what training might do.
 */
export async function planJob(
  db: Db,
  company: string,
  at: string,
  schemes: readonly Scheme[],
  job: Job,
): Promise<JobPlan> {
  const search: Search = {
    company,
    at,
    job: job.id,
    schemes,
    span: { from: dayFrom(job.startsOn), through: dayFrom(job.endsOn) },
    travelOf: travelOf(job.travel),
  };
  const requires = new Map(schemes.map(({ id, requires }) => [id as string, requires]));
  const asked = new Set(job.roles.flatMap(({ needs }) => needs));
  const holders = await candidates(db, search, asked);
  const fitOf = (all: typeof holders) =>
    jobFit(
      job.roles,
      all.map(({ candidate }) => candidate),
      requires,
    );
  const first = fitOf(holders);
  if (first.shortages.length === 0) return { fit: first, people: named(first, holders) };
  const everybody = await candidates(db, search, 'everybody');
  const fit = fitOf(everybody);
  return { fit, people: named(fit, everybody) };
}

/** A crew whose way nobody wrote down counts as far as the farthest that was; without any all are alike. */
const travelOf = (miles: ReadonlyMap<string, number>) => {
  const farthest = Math.max(0, ...miles.values());
  return (crew: string | null): number => (crew === null ? undefined : miles.get(crew)) ?? farthest;
};

function named(fit: JobFit, people: readonly Someone[]): ReadonlyMap<string, Someone> {
  const ids = new Set([
    ...fit.sent.map(({ person }) => person),
    ...fit.shortages.flatMap((shortage) => shortage.people),
    ...(fit.training?.lessons.map(({ person }) => person) ?? []),
  ]);
  return new Map(
    people
      .filter(({ id }) => ids.has(id))
      .map(({ id, name, crew, crewName }) => [id, { id, name, crew, crewName }]),
  );
}

/** `CHANGED`: by now others would be sent than those that were looked at. Nobody is sent. */
export type SendFault = JobFault | 'CHANGED' | 'SHORT';

/** Tells those to go whom the plan names, in the place of whoever was sent before. */
export const send = (
  db: Db,
  act: Act,
  schemes: readonly Scheme[],
  id: string,
  lookedAt: readonly string[],
): Promise<Result<number, SendFault>> =>
  inTurn(db, act.by.company, async (trx) => {
    const job = await one(trx, act.by.company, id);
    if (!job || job.closedAt !== null) return fault('ABSENT');
    const { fit } = await planJob(trx, act.by.company, act.at, schemes, job);
    if (fit.shortages.length > 0) return fault('SHORT');
    const people = fit.sent.map(({ person }) => person);
    const isSame = people.toSorted().join() === lookedAt.toSorted().join();
    if (!isSame) return fault('CHANGED');
    await trx.deleteFrom('job_person').where('job_id', '=', id).execute();
    const rows = fit.sent.map(({ person, role }) => ({
      job_id: id,
      role_id: role,
      person_id: person,
      sent_by: act.by.person,
      sent_at: act.at,
    }));
    await trx.insertInto('job_person').values(rows).execute();
    await append(trx, doerOf(act), { action: 'send to job', subject: id, detail: { people } });
    return ok(people.length);
  });
