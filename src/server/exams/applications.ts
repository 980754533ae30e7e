/**
 * Applications for a certificate: opened by the office for somebody of the company, seen with where each
 * part stands, closed by a decision or taken back.
 */
import type { Content } from '#engine/compile/content.ts';
import type { IsoDate } from '#engine/calendar.ts';
import { renewalPhase, renewalStanding, renewalWindow } from '#engine/exam/renewal.ts';
import { type Part, renewalParts, type Scheme, type SchemeId } from '#engine/exam/scheme.ts';
import { type Standing, standingOf } from '#engine/exam/standing.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { append } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';
import { isPresent } from '../people/is-present.ts';
import { type Act, doerOf } from '../people/member.ts';
import { dayOf, pastOf } from './past.ts';

export { dayOf, pastOf };

/**
 * `OPEN_ALREADY`: there is one for this scheme that was not decided. `SUSPENDED`: their certificate is,
 * which has to be settled first. `NOT_DUE`: they hold it, and may renew it from that day.
 */
export type OpeningFault =
  | { readonly code: 'UNKNOWN_PERSON' | 'UNKNOWN_SCHEME' | 'OPEN_ALREADY' | 'SUSPENDED' }
  | { readonly code: 'NEEDS_CERTIFICATE'; readonly schemes: readonly SchemeId[] }
  | { readonly code: 'NOT_DUE'; readonly from: IsoDate };

export type Opening = { readonly person: string; readonly scheme: string };

/** Opens one and tells its id. Where a certificate can be renewed it is for renewing it. */
export async function openApplication(
  db: Db,
  act: Act,
  content: Content,
  { person, scheme: id }: Opening,
): Promise<Result<string, OpeningFault>> {
  const scheme = content.schemes.get(id as SchemeId);
  if (!scheme) return fault({ code: 'UNKNOWN_SCHEME' });
  return inTurn(db, act.by.company, async (trx) => {
    if (!(await isPresent(trx, act.by.company, person))) return fault({ code: 'UNKNOWN_PERSON' });
    if (await isOpen(trx, person, scheme)) return fault({ code: 'OPEN_ALREADY' });
    const renews = await renewable(trx, person, scheme, dayOf(act.at));
    if (!renews.ok) return renews;
    const past = await pastOf(trx, person, scheme);
    const { lacks } = standingOf(scheme, past, dayOf(act.at));
    if (lacks.length > 0) return fault({ code: 'NEEDS_CERTIFICATE', schemes: lacks });
    const application = freshId();
    await trx
      .insertInto('application')
      .values({
        id: application,
        company_id: act.by.company,
        person_id: person,
        scheme: scheme.id,
        renews: renews.value ?? null,
        made_by: act.by.person,
        made_at: act.at,
      })
      .execute();
    await append(trx, doerOf(act), {
      action: 'open application',
      subject: application,
      detail: { person, scheme: scheme.id, renews: renews.value ?? null },
    });
    return ok(application);
  });
}

const isOpen = async (trx: Db, person: string, { id }: Scheme): Promise<boolean> =>
  (await trx
    .selectFrom('application')
    .select('id')
    .where('person_id', '=', person)
    .where('scheme', '=', id)
    .where('closed_at', 'is', null)
    .executeTakeFirst()) !== undefined;

/** The certificate that an application of today would renew; undefined where it is for a first one. */
async function renewable(
  trx: Db,
  person: string,
  scheme: Scheme,
  today: IsoDate,
): Promise<Result<string | undefined, OpeningFault>> {
  const last = await trx
    .selectFrom('certificate')
    .select(['id', 'state', 'valid_until'])
    .where('person_id', '=', person)
    .where('scheme', '=', scheme.id)
    .where('state', '!=', 'withdrawn')
    .where('replaced_by', 'is', null)
    .orderBy('valid_until', 'desc')
    .executeTakeFirst();
  if (!last) return ok(undefined);
  const until = last.valid_until as IsoDate;
  const phase = renewalPhase(scheme, until, today);
  if (phase === 'lapsed') return ok(undefined);
  if (last.state === 'suspended') return fault({ code: 'SUSPENDED' });
  if (phase !== 'current') return ok(last.id);
  return fault({ code: 'NOT_DUE', from: renewalWindow(scheme, until).opens });
}

export type Application = {
  readonly id: string;
  readonly person: string;
  readonly personName: string;
  readonly scheme: SchemeId;
  /** The certificate that it renews, with its last day. */
  readonly renews: { readonly id: string; readonly until: IsoDate } | undefined;
  readonly madeBy: string;
  readonly madeAt: string;
  readonly closedAt: string | null;
};

const applicationsOf = (db: Db, company: string) =>
  db
    .selectFrom('application')
    .innerJoin('person', 'person.id', 'application.person_id')
    .leftJoin('certificate', 'certificate.id', 'application.renews')
    .select([
      'application.id',
      'application.person_id as person',
      'person.name as personName',
      'application.scheme',
      'application.renews',
      'certificate.valid_until as until',
      'application.made_by as madeBy',
      'application.made_at as madeAt',
      'application.closed_at as closedAt',
    ])
    .where('application.company_id', '=', company);

type Row = Awaited<ReturnType<ReturnType<typeof applicationsOf>['execute']>>[number];

const applicationFrom = ({ renews, until, scheme, ...row }: Row): Application => ({
  ...row,
  scheme: scheme as SchemeId,
  renews: renews !== null && until !== null ? { id: renews, until: until as IsoDate } : undefined,
});

/** Undefined for one of another company, or that is not there. */
export async function application(
  db: Db,
  company: string,
  id: string,
): Promise<Application | undefined> {
  const row = await applicationsOf(db, company).where('application.id', '=', id).executeTakeFirst();
  return row && applicationFrom(row);
}

export const shownAtOnce = 50;

/** Those under way or those that are closed, the newest first; `after` is the last one shown before. */
export async function list(
  db: Db,
  company: string,
  { when, after }: { readonly when: 'open' | 'closed'; readonly after?: string },
): Promise<{ readonly applications: readonly Application[]; readonly next: string | undefined }> {
  const all = applicationsOf(db, company).where(
    'application.closed_at',
    when === 'open' ? 'is' : 'is not',
    null,
  );
  // Identifiers sort by when they were made.
  const rows = await (after ? all.where('application.id', '<', after) : all)
    .orderBy('application.id', 'desc')
    .limit(shownAtOnce + 1)
    .execute();
  const applications = rows.slice(0, shownAtOnce).map(applicationFrom);
  return { applications, next: rows.length > shownAtOnce ? applications.at(-1)?.id : undefined };
}

/** What is examined for it: the scheme's parts, or those of a renewal. */
export const partsFor = (
  scheme: Scheme,
  { renews }: Pick<Application, 'renews'>,
): readonly Part[] => (renews ? renewalParts(scheme) : scheme.parts);

/** Where it stands on a day: which parts are passed, may be taken, or must wait. */
export async function standingFor(
  db: Db,
  scheme: Scheme,
  { person, renews }: Pick<Application, 'person' | 'renews'>,
  today: IsoDate,
): Promise<Standing> {
  const past = await pastOf(db, person, scheme);
  return renews
    ? renewalStanding(scheme, past, renews.until, today)
    : standingOf(scheme, past, today);
}
