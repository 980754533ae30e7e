/** What was decided on an application and appealed against, and the one place that writes it. */
import type { IsoDate } from '#engine/calendar.ts';
import type { Content } from '#engine/compile/content.ts';
import type { Application as Case, Decision, Verdict } from '#engine/exam/decision.ts';
import { lacksIn } from '#engine/exam/evidence.ts';
import type { PartId } from '#engine/exam/scheme.ts';
import { rationalText } from '#engine/measure/rational.ts';
import { append } from '../audit/audit-trail.ts';
import { grantCertificate } from '../certificates/grant.ts';
import type { Db } from '../database/open-database.ts';
import { type Application, partsFor } from '../exams/applications.ts';
import { type Act, doerOf } from '../people/member.ts';

export type Ruling = {
  readonly id: string;
  readonly application: string;
  /** The appeal that it decides. */
  readonly appeal: string | null;
  readonly verdict: Verdict;
  readonly by: string;
  readonly byName: string;
  readonly on: IsoDate;
  readonly because: string;
  readonly asks: readonly PartId[];
  readonly until: IsoDate | null;
  readonly madeAt: string;
};

const rulings = (db: Db) =>
  db
    .selectFrom('ruling')
    .innerJoin('person', 'person.id', 'ruling.by_person_id')
    .select([
      'ruling.id',
      'application_id as application',
      'appeal_id as appeal',
      'verdict',
      'by_person_id as by',
      'person.name as byName',
      'on_date as on',
      'because',
      'asks',
      'until',
      'made_at as madeAt',
    ]);

type Row = Awaited<ReturnType<ReturnType<typeof rulings>['execute']>>[number];

const rulingFrom = ({ verdict, on, asks, until, ...row }: Row): Ruling => ({
  ...row,
  verdict: verdict as Verdict,
  on: on as IsoDate,
  asks: JSON.parse(asks) as readonly PartId[],
  until: until as IsoDate | null,
});

/** As the rules of an appeal see it. */
export const decisionOf = (
  { verdict, by, on, because, asks, until }: Ruling,
  { scheme, person }: Application,
): Decision => ({
  verdict,
  by,
  on,
  because,
  asks,
  scheme,
  candidate: person,
  until: until ?? undefined,
});

/** The earliest first. */
export async function rulingsOn(db: Db, application: string): Promise<readonly Ruling[]> {
  const rows = await rulings(db)
    .where('application_id', '=', application)
    .orderBy('made_at')
    .orderBy('ruling.id')
    .execute();
  return rows.map(rulingFrom);
}

export async function ruling(db: Db, company: string, id: string): Promise<Ruling | undefined> {
  const row = await rulings(db)
    .where('ruling.company_id', '=', company)
    .where('ruling.id', '=', id)
    .executeTakeFirst();
  return row && rulingFrom(row);
}

export type AppealRow = {
  readonly id: string;
  readonly ruling: string;
  readonly by: string;
  readonly on: IsoDate;
  readonly because: string;
  readonly madeAt: string;
};

/** Every appeal against a decision on an application, the earliest first. */
export async function appealsOn(db: Db, application: string): Promise<readonly AppealRow[]> {
  const rows = await db
    .selectFrom('appeal')
    .innerJoin('ruling', 'ruling.id', 'appeal.ruling_id')
    .select([
      'appeal.id',
      'ruling_id as ruling',
      'appeal.by_person_id as by',
      'appeal.on_date as on',
      'appeal.because',
      'appeal.made_at as madeAt',
    ])
    .where('ruling.application_id', '=', application)
    .orderBy('appeal.made_at')
    .execute();
  return rows.map((row) => ({ ...row, on: row.on as IsoDate }));
}

/** The one that nobody decided on yet. */
export const openAppeal = (
  appeals: readonly AppealRow[],
  decided: readonly Ruling[],
): AppealRow | undefined =>
  appeals.find(({ id }) => !decided.some((ruling) => ruling.appeal === id));

export const longestReason = 4000;

/** As it is kept: in one form of Unicode, with plain ends of lines, and none around it. */
export const reasonFrom = (text: string): string =>
  text.normalize('NFC').replace(/\r\n?/g, '\n').trim();

type Written = {
  readonly id: string;
  readonly application: Application;
  readonly decision: Decision;
  readonly about: Case;
  readonly appeal: string | null;
};

/** What the decider had before them, as it was then. */
const evidenceText = ({ scheme, standing, evidence, involved }: Case, application: Application) =>
  JSON.stringify({
    evidence: evidence.map(({ agreement, ...one }) => ({
      ...one,
      agreement: agreement ? rationalText(agreement) : null,
    })),
    involved,
    lacks: lacksIn(partsFor(scheme, application), standing, evidence),
  });

/** Writes a decision that the rules let through, with its certificate where it grants one. */
export async function writeRuling(
  trx: Db,
  act: Act,
  content: Pick<Content, 'methods'>,
  { id, application, decision, about, appeal }: Written,
): Promise<string | undefined> {
  const { verdict, on, because, asks, until } = decision;
  await trx
    .insertInto('ruling')
    .values({
      id,
      company_id: act.by.company,
      application_id: application.id,
      appeal_id: appeal,
      verdict,
      by_person_id: act.by.person,
      on_date: on,
      because,
      asks: JSON.stringify(asks),
      evidence: evidenceText(about, application),
      until: until ?? null,
      made_at: act.at,
    })
    .execute();
  await trx
    .updateTable('application')
    .set({ closed_at: verdict === 'ask-for-more' ? null : act.at })
    .where('id', '=', application.id)
    .execute();
  await append(trx, doerOf(act), {
    action: appeal === null ? 'decide on application' : 'decide on appeal',
    subject: application.id,
    detail: { ruling: id, verdict, person: application.person, scheme: application.scheme, asks },
  });
  if (verdict !== 'grant' || !until) return undefined;
  return grantCertificate(trx, act, content, {
    person: application.person,
    scheme: about.scheme,
    ruling: id,
    grantedOn: on,
    validUntil: until,
    renews: application.renews?.id ?? null,
  });
}
