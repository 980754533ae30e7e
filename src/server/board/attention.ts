/**
 * What waits for the office today, in the order in which it can hurt: people on walls without a certificate
 * that holds, certificates that end, jobs that cannot be filled, examinations that somebody waits for,
 * applications, and work given that is late.
 */
import { addPeriod, daysBetween, type IsoDate } from '#engine/calendar.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import { type Attention, endingSpans } from '#engine/record/attention.ts';
import * as assignmentList from '../assignments/assignment-list.ts';
import * as thoseGiven from '../assignments/those-given.ts';
import type { Db } from '../database/open-database.ts';
import * as jobs from '../jobs/jobs.ts';
import { planJob } from '../jobs/plan-job.ts';
import { counts } from './board.ts';
import { endings } from './coverage-of.ts';
import { dayFrom } from './records-of.ts';

const shown = { endings: 8, jobs: 8, exams: 5, late: 5 } as const;

export async function attention(
  db: Db,
  company: string,
  at: string,
  schemes: readonly Scheme[],
): Promise<readonly Attention[]> {
  const counted = await counts(db, company, at, schemes, ['suspended', 'lapsed']);
  const inState = (kind: 'suspended' | 'lapsed') =>
    schemes.flatMap(({ id }) => {
      const people = counted.get(id)?.[kind] ?? 0;
      return people > 0 ? [{ kind, scheme: id, people }] : [];
    });
  return [
    ...inState('suspended'),
    ...inState('lapsed'),
    ...(await endingSoon(db, company, at)),
    ...(await shortJobs(db, company, at, schemes)),
    ...(await examsWaiting(db, company)),
    ...(await openApplications(db, company)),
    ...(await lateWork(db, company, at)),
  ];
}

/** In the order of their last day. */
async function endingSoon(db: Db, company: string, at: string): Promise<readonly Attention[]> {
  const today = dayFrom(at);
  const through = addPeriod(today, { count: endingSpans[2], unit: 'days' });
  const all = await endings(db, company, at, through, 1000);
  const named = all.slice(0, shown.endings).map((ending) => {
    const days = daysBetween(today, ending.until as IsoDate);
    return {
      kind: 'ending' as const,
      within: endingSpans.find((span) => days <= span)!,
      ...ending,
    };
  });
  const more = all.length - named.length;
  return more > 0 ? [...named, { kind: 'more-ending', people: more }] : named;
}

async function shortJobs(
  db: Db,
  company: string,
  at: string,
  schemes: readonly Scheme[],
): Promise<readonly Attention[]> {
  const found: Attention[] = [];
  for (const { id } of await jobs.list(db, company, at.slice(0, 10), 'ahead', shown.jobs)) {
    const job = await jobs.one(db, company, id);
    if (!job) continue;
    const { fit } = await planJob(db, company, at, schemes, job);
    const empty = fit.places - fit.sent.length;
    if (empty > 0) found.push({ kind: 'job', id, title: job.title, empty });
  }
  return found;
}

/** Appeals that nobody answered, and sittings handed in whose result nobody released; the oldest first. */
export async function examsWaiting(db: Db, company: string): Promise<readonly Attention[]> {
  const appeals = await db
    .selectFrom('appeal')
    .innerJoin('ruling', 'ruling.id', 'appeal.ruling_id')
    .innerJoin('application', 'application.id', 'ruling.application_id')
    .innerJoin('person', 'person.id', 'application.person_id')
    .leftJoin('ruling as answer', 'answer.appeal_id', 'appeal.id')
    .select(['application.id as application', 'person.name'])
    .where('appeal.company_id', '=', company)
    .where('answer.id', 'is', null)
    .orderBy('appeal.made_at')
    .limit(shown.exams)
    .execute();
  const sittings = await db
    .selectFrom('sitting')
    .innerJoin('person', 'person.id', 'sitting.person_id')
    .select(['sitting.id as sitting', 'sitting.scheme', 'person.name'])
    .where('sitting.company_id', '=', company)
    .where('sitting.phase', '=', 'handed-in')
    .orderBy('sitting.made_at')
    .limit(shown.exams)
    .execute();
  return [
    ...appeals.map((row) => ({ kind: 'appeal' as const, ...row })),
    ...sittings.map((row) => ({ kind: 'handed-in' as const, ...row })),
  ];
}

async function openApplications(db: Db, company: string): Promise<readonly Attention[]> {
  const { open } = await db
    .selectFrom('application')
    .select(({ fn }) => fn.countAll().as('open'))
    .where('company_id', '=', company)
    .where('closed_at', 'is', null)
    .executeTakeFirstOrThrow();
  return Number(open) > 0 ? [{ kind: 'applications', open: Number(open) }] : [];
}

async function lateWork(db: Db, company: string, at: string): Promise<readonly Attention[]> {
  const rows = await db
    .selectFrom('assignment')
    .select(['id', 'title'])
    .where('company_id', '=', company)
    .where('withdrawn_at', 'is', null)
    .where('due_at', '<', at)
    .orderBy('made_at', 'desc')
    .orderBy('id', 'desc')
    .limit(shown.late)
    .execute();
  const found: Attention[] = [];
  for (const { id, title } of rows) {
    const given = await assignmentList.one(db, company, id);
    if (!given) continue;
    const { late } = await thoseGiven.counts(db, company, given, at);
    const to = [...given.crews, ...given.persons].map(({ name }) => name);
    if (late > 0) found.push({ kind: 'late', id, title, to, people: late });
  }
  return found;
}
