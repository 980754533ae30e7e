/**
 * Calendars of renewals at secret addresses, one's own and, for the office, the company's. Of an address
 * only the digest is kept: it is shown when it is made, and making another stops the one before.
 */
import type { IsoDate } from '#engine/calendar.ts';
import { type CalendarEntry, writtenCalendar } from '#engine/certificate/i-calendar.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Language } from '#engine/text.ts';
import { may } from '../access/rights.ts';
import { rolesFrom } from '../access/roles.ts';
import { append } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';
import { type Limit, waitFor } from '../logins/throttle.ts';
import { digestOf, freshSecret } from '../people/card-secret.ts';
import { type Act, doerOf } from '../people/member.ts';
import { all, type Holding, own } from './holdings.ts';

export const feedKinds = ['own', 'company'] as const;
export type FeedKind = (typeof feedKinds)[number];

export const mayFollow = (roles: Act['by']['roles'], about: FeedKind): boolean =>
  about === 'own' || may(roles, 'see certificates');

/** A new secret for a calendar; undefined where it is not theirs to follow. */
export const makeFeed = (db: Db, act: Act, about: FeedKind): Promise<string | undefined> =>
  inTurn(db, act.by.company, async (trx) => {
    const { company, person, roles } = act.by;
    if (!mayFollow(roles, about)) return undefined;
    const [id, secret] = [freshId(), freshSecret()];
    const digest = digestOf(secret);
    await trx
      .insertInto('calendar_feed')
      .values({ id, company_id: company, person_id: person, about, digest, made_at: act.at })
      .onConflict((conflict) =>
        conflict.columns(['person_id', 'about']).doUpdateSet({ digest, made_at: act.at }),
      )
      .execute();
    const deed = { action: 'make calendar address', subject: person, detail: { about } };
    await append(trx, doerOf(act), deed);
    return secret;
  });

/** Since when somebody has which calendars. */
export const feedsOf = (db: Db, person: string) =>
  db
    .selectFrom('calendar_feed')
    .select(['about', 'made_at as madeAt'])
    .where('person_id', '=', person)
    .execute();

const words = {
  name: { en: 'Certificate renewals', es: 'Renovación de certificados' },
  ends: { en: 'Certificate ends', es: 'Termina el certificado' },
  renew: {
    en: 'It holds on this day for the last time. Apply for renewal before then.',
    es: 'Vale por última vez este día. Solicite la renovación antes.',
  },
} as const;

const entryOf = (
  { id, name, title, validUntil, publicId }: Holding,
  { about, origin, language }: { about: string; origin: string; language: Language },
): CalendarEntry => ({
  uid: `${id}@${new URL(origin).host}`,
  on: validUntil as IsoDate,
  summary: `${words.ends[language]}: ${title[language]}${about === 'company' ? ` – ${name}` : ''}`,
  description: words.renew[language],
  url: `${origin}/verify/${publicId}`,
});

const feedRow = (db: Db, secret: string) =>
  db
    .selectFrom('calendar_feed')
    .innerJoin('person', 'person.id', 'calendar_feed.person_id')
    .innerJoin('company', 'company.id', 'person.company_id')
    .select([
      'calendar_feed.about',
      'person.id as person',
      'person.roles',
      'person.language',
      'company.id as company',
      'company.name as companyName',
    ])
    .where('digest', '=', digestOf(secret))
    .where('person.left_at', 'is', null)
    .executeTakeFirst();

/** Programs fetch these by themselves, some every few minutes. */
const fetching: Limit = { most: 120, seconds: 15 * 60 };

/** The calendar of a secret: what neither is withdrawn nor renewed, and ends today or later. */
export async function feed(
  db: Db,
  asked: { readonly secret: string; readonly address: string },
  { origin, at }: { readonly origin: string; readonly at: string },
): Promise<Result<string, 'ABSENT' | 'TOO_OFTEN'>> {
  const wait = await waitFor(db, `calendar-from/${asked.address}`, fetching, new Date(at));
  if (wait > 0) return fault('TOO_OFTEN');
  const row = await feedRow(db, asked.secret);
  const about = feedKinds.find((kind) => kind === row?.about);
  if (!row || !about || !mayFollow(rolesFrom(row.roles), about)) return fault('ABSENT');
  const today = at.slice(0, 10) as IsoDate;
  const { company, person, companyName } = row;
  const holdings = await (about === 'own'
    ? own(db, company, person, today)
    : all(db, company, today));
  const language: Language = row.language === 'es' ? 'es' : 'en';
  const entries = holdings
    .filter(
      ({ isRenewed, possible, validUntil }) =>
        !isRenewed && possible.length > 0 && validUntil >= today,
    )
    .map((holding) => entryOf(holding, { about, origin, language }));
  return ok(writtenCalendar({ name: `${words.name[language]} – ${companyName}`, at, entries }));
}
