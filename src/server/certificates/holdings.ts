/** Certificates as their holders and the office see them. */
import type { IsoDate } from '#engine/calendar.ts';
import { type Change, changesFrom } from '#engine/certificate/change.ts';
import type { Scope } from '#engine/certificate/scope.ts';
import {
  type CertificateState,
  certificateState,
  isStanding,
  type Reminder,
  reminderOn,
} from '#engine/certificate/state.ts';
import type { Text } from '#engine/text.ts';
import type { Db } from '../database/open-database.ts';
import { folded } from '../people/folded.ts';

export type Holding = {
  readonly id: string;
  readonly publicId: string;
  readonly person: string;
  readonly name: string;
  readonly scheme: string;
  readonly title: Text;
  readonly state: CertificateState;
  readonly grantedOn: string;
  readonly validUntil: string;
  /** Which reminder is the one of today, where it is not renewed. */
  readonly reminder: Reminder | undefined;
  readonly isRenewed: boolean;
  readonly nameShown: string;
  /** What the office may do with it now. */
  readonly possible: readonly Change[];
};

const rows = (db: Db, company: string) =>
  db
    .selectFrom('certificate')
    .innerJoin('person', 'person.id', 'certificate.person_id')
    .innerJoin('certificate_issue', 'certificate_issue.certificate_id', 'certificate.id')
    .select([
      'certificate.id',
      'certificate.public_id as publicId',
      'certificate.person_id as person',
      'person.name',
      'certificate.scheme',
      'certificate.state',
      'certificate.granted_on as grantedOn',
      'certificate.valid_until as validUntil',
      'certificate.replaced_by as replacedBy',
      'certificate.name_shown as nameShown',
      'certificate_issue.scope',
    ])
    .where('certificate.company_id', '=', company)
    .where('certificate_issue.number', '=', (one) =>
      one
        .selectFrom('certificate_issue as last')
        .select(({ fn }) => fn.max('last.number').as('number'))
        .whereRef('last.certificate_id', '=', 'certificate.id'),
    );

type Row = Awaited<ReturnType<ReturnType<typeof rows>['execute']>>[number];

function holdingFrom(
  { scope: text, replacedBy, state: kept, ...row }: Row,
  today: IsoDate,
): Holding {
  const scope = JSON.parse(text) as Scope;
  const standing = isStanding(kept) ? kept : 'withdrawn';
  const until = row.validUntil as IsoDate;
  const isRenewed = replacedBy !== null;
  const state = certificateState(
    { standing, until, renewalOpens: scope.renewalOpens, isRenewed },
    today,
  );
  const isAsked = standing !== 'withdrawn' && !isRenewed;
  return {
    ...row,
    title: scope.title,
    state,
    isRenewed,
    reminder: isAsked ? reminderOn(until, today) : undefined,
    possible: changesFrom(standing),
  };
}

/** One's own, the one that ends last first. */
export async function own(
  db: Db,
  company: string,
  person: string,
  today: IsoDate,
): Promise<readonly Holding[]> {
  const found = await rows(db, company)
    .where('certificate.person_id', '=', person)
    .orderBy('certificate.valid_until', 'desc')
    .execute();
  return found.map((row) => holdingFrom(row, today));
}

/** Everybody's of a company, the one that ends first first; those of who has left come too. */
export async function all(db: Db, company: string, today: IsoDate): Promise<readonly Holding[]> {
  const found = await rows(db, company)
    .orderBy('certificate.valid_until')
    .orderBy('person.search')
    .orderBy('certificate.id')
    .execute();
  return found.map((row) => holdingFrom(row, today));
}

type Asked = {
  readonly person?: string | undefined;
  readonly after?: string | undefined;
  readonly most: number;
  readonly today: IsoDate;
};

/** In the order in which they were made, those after one of them. */
export async function page(
  db: Db,
  company: string,
  { person, after, most: count, today }: Asked,
): Promise<{ readonly found: readonly Holding[]; readonly next: string | undefined }> {
  let query = rows(db, company)
    .orderBy('certificate.id')
    .limit(count + 1);
  if (person) query = query.where('certificate.person_id', '=', person);
  if (after) query = query.where('certificate.id', '>', after);
  const read = await query.execute();
  const found = read.slice(0, count).map((row) => holdingFrom(row, today));
  return { found, next: read.length > count ? found.at(-1)?.id : undefined };
}

/** A page of them, and how many more there are. */
const most = 200;

const isUrgent = ({ reminder, state, possible }: Holding): boolean =>
  possible.length > 0 && (reminder !== undefined || state === 'suspended');

/** Those that ask for something, or all; of people whose name holds what is looked for. */
export async function listed(
  db: Db,
  company: string,
  wanted: { readonly show: 'attention' | 'all'; readonly search: string; readonly today: IsoDate },
): Promise<{
  readonly certificates: readonly Holding[];
  readonly more: number;
  readonly count: number;
}> {
  const everybody = await all(db, company, wanted.today);
  const looked = folded(wanted.search);
  const found = everybody
    .filter((holding) => wanted.show === 'all' || isUrgent(holding))
    .filter(({ name }) => folded(name).includes(looked));
  return {
    certificates: found.slice(0, most),
    more: Math.max(0, found.length - most),
    count: everybody.length,
  };
}

export async function one(
  db: Db,
  company: string,
  certificate: string,
  today: IsoDate,
): Promise<Holding | undefined> {
  const row = await rows(db, company).where('certificate.id', '=', certificate).executeTakeFirst();
  return row && holdingFrom(row, today);
}

export type PastEvent = {
  readonly kind: string;
  readonly by: string | null;
  readonly reason: string;
  readonly at: string;
};

/** What happened to it, the latest first, with the names of who did it. */
export async function historyOf(db: Db, certificate: string): Promise<readonly PastEvent[]> {
  return db
    .selectFrom('certificate_event')
    .leftJoin('person', 'person.id', 'certificate_event.by_person_id')
    .select(['kind', 'person.name as by', 'reason', 'at'])
    .where('certificate_id', '=', certificate)
    .orderBy('at', 'desc')
    .orderBy('certificate_event.id', 'desc')
    .execute();
}
