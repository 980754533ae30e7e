/** What a company's month comes to in numbers, and what lies ahead of it. */
import { addPeriod, type IsoDate } from '#engine/calendar.ts';
import type { Coverage } from '#engine/competence/coverage.ts';
import {
  type QualificationState,
  qualificationStates,
} from '#engine/competence/qualification-state.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import type { Attention } from '#engine/record/attention.ts';
import { counts } from '../board/board.ts';
import { coverageOf, type Ending, endings } from '../board/coverage-of.ts';
import { dayFrom } from '../board/records-of.ts';
import type { Db } from '../database/open-database.ts';
import { attention } from '../board/attention.ts';
import type { ReportMonth } from './month.ts';

export type Figures = {
  readonly today: IsoDate;
  readonly month: ReportMonth;
  readonly people: number;
  /** By scheme. */
  readonly states: ReadonlyMap<string, Readonly<Partial<Record<QualificationState, number>>>>;
  readonly coverage: ReadonlyMap<string, Coverage>;
  readonly granted: ReadonlyMap<string, number>;
  /** Attempts received on each day of the month. */
  readonly practice: readonly number[];
  readonly practised: number;
  readonly ending: readonly Ending[];
  readonly shortJobs: readonly Extract<Attention, { kind: 'job' }>[];
};

const most = 40;

export async function figures(
  db: Db,
  company: string,
  at: string,
  schemes: readonly Scheme[],
  month: ReportMonth,
): Promise<Figures> {
  const today = dayFrom(at);
  const sixty = addPeriod(today, { count: 60, unit: 'days' });
  const waiting = await attention(db, company, at, schemes);
  const { people } = await db
    .selectFrom('person')
    .select(({ fn }) => fn.countAll().as('people'))
    .where('company_id', '=', company)
    .where('left_at', 'is', null)
    .executeTakeFirstOrThrow();
  return {
    today,
    month,
    people: Number(people),
    states: await counts(db, company, at, schemes, qualificationStates),
    coverage: await coverageOf(db, company, at, schemes),
    granted: await grantedIn(db, company, month),
    ...(await practiceIn(db, company, month)),
    ending: await endings(db, company, at, sixty, most),
    shortJobs: waiting.filter((one) => one.kind === 'job'),
  };
}

async function grantedIn(db: Db, company: string, { from, through }: ReportMonth) {
  const rows = await db
    .selectFrom('certificate')
    .select(({ fn }) => ['scheme', fn.countAll().as('granted')])
    .where('company_id', '=', company)
    .where('granted_on', '>=', from)
    .where('granted_on', '<=', through)
    .groupBy('scheme')
    .execute();
  return new Map(rows.map(({ scheme, granted }) => [scheme, Number(granted)]));
}

async function practiceIn(db: Db, company: string, { from, through }: ReportMonth) {
  const rows = await db
    .selectFrom('attempt')
    .select(['person_id as person', 'received_at as at'])
    .where('company_id', '=', company)
    .where('received_at', '>=', `${from}T00:00:00.000Z`)
    .where('received_at', '<=', `${through}T23:59:59.999Z`)
    .execute();
  const practice = Array.from({ length: Number(through.slice(8)) }, () => 0);
  for (const { at } of rows) practice[Number(at.slice(8, 10)) - 1]! += 1;
  return { practice, practised: new Set(rows.map(({ person }) => person)).size };
}
