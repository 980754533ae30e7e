/**
 * Crew cards: an invitation for one person, by a secret that is shown once. Only its digest is kept. A
 * card runs out, can be revoked, works once, and making a new one revokes the ones before.
 */
import { fault, ok, type Result } from '#engine/result.ts';
import { append, type Doer } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';
import { type Role, rolesFrom } from '../access/roles.ts';
import { digestOf, freshSecret } from './card-secret.ts';
import { type Act, doerOf } from './member.ts';

const days = 14;
const dayMilliseconds = 24 * 60 * 60 * 1000;

/** What is printed. The secret is nowhere else. */
export type CrewCard = {
  readonly id: string;
  readonly person: string;
  readonly name: string;
  readonly number: string | null;
  readonly secret: string;
  readonly expiresAt: string;
};

/**
 * Whether somebody may make a card for a person. A card signs in as that person: so who is not of the
 * office makes them for those alone who have no say over others.
 */
export const mayInvite = (by: readonly Role[], roles: readonly Role[]): boolean =>
  by.includes('office') || roles.every((role) => role === 'apprentice');

/** A card for each of the people whom one may invite; others are passed over. */
export async function make(
  db: Db,
  act: Act,
  people: readonly string[],
): Promise<readonly CrewCard[]> {
  if (people.length === 0) return [];
  const { company } = act.by;
  return inTurn(db, company, async (trx) => {
    const found = await trx
      .selectFrom('person')
      .select(['id', 'name', 'number', 'roles'])
      .where('company_id', '=', company)
      .where('id', 'in', people)
      .where('left_at', 'is', null)
      .where('erased_at', 'is', null)
      .orderBy('search')
      .execute();
    const expiresAt = new Date(Date.parse(act.at) + days * dayMilliseconds).toISOString();
    const cards: CrewCard[] = [];
    for (const { id: person, name, number, roles } of found) {
      if (!mayInvite(act.by.roles, rolesFrom(roles))) continue;
      const [id, secret] = [freshId(), freshSecret()];
      await revokeOpen(trx, company, person, act.at);
      await trx
        .insertInto('crew_card')
        .values({
          id,
          company_id: company,
          person_id: person,
          digest: digestOf(secret),
          made_by: act.by.person,
          made_at: act.at,
          expires_at: expiresAt,
        })
        .execute();
      const detail = { card: id, expiresAt };
      await append(trx, doerOf(act), { action: 'make crew card', subject: person, detail });
      cards.push({ id, person, name, number, secret, expiresAt });
    }
    return cards;
  });
}

export async function revokeOpen(
  trx: Db,
  company: string,
  person: string,
  at: string,
): Promise<boolean> {
  const revoked = await trx
    .updateTable('crew_card')
    .set({ revoked_at: at })
    .where('company_id', '=', company)
    .where('person_id', '=', person)
    .where('used_at', 'is', null)
    .where('revoked_at', 'is', null)
    .returning('id')
    .execute();
  return revoked.length > 0;
}

/** Revokes whatever card somebody has; a fault where they have none that one may revoke. */
export async function revoke(db: Db, act: Act, person: string): Promise<Result<true, 'ABSENT'>> {
  const { company } = act.by;
  return inTurn(db, company, async (trx) => {
    const about = await trx
      .selectFrom('person')
      .select('roles')
      .where('company_id', '=', company)
      .where('id', '=', person)
      .executeTakeFirst();
    if (!about || !mayInvite(act.by.roles, rolesFrom(about.roles))) return fault('ABSENT');
    if (!(await revokeOpen(trx, company, person, act.at))) return fault('ABSENT');
    await append(trx, doerOf(act), { action: 'revoke crew card', subject: person });
    return ok(true);
  });
}

/** Until when somebody's card works; undefined where they have none. */
export async function openUntil(
  db: Db,
  company: string,
  person: string,
  at: string,
): Promise<string | undefined> {
  const card = await db
    .selectFrom('crew_card')
    .select('expires_at')
    .where('company_id', '=', company)
    .where('person_id', '=', person)
    .where('used_at', 'is', null)
    .where('revoked_at', 'is', null)
    .where('expires_at', '>', at)
    .executeTakeFirst();
  return card?.expires_at;
}

/** What whoever holds a card that works learns from it. */
export type Invitation = {
  readonly company: string;
  readonly companyName: string;
  readonly person: string;
  readonly name: string;
  readonly email: string | null;
  readonly login: string | null;
  readonly expiresAt: string;
};

/** The invitation of a secret; undefined alike for one that never was, ran out, was used or revoked. */
export async function invitation(
  db: Db,
  secret: string,
  at: string,
): Promise<Invitation | undefined> {
  return db
    .selectFrom('crew_card')
    .innerJoin('person', 'person.id', 'crew_card.person_id')
    .innerJoin('company', 'company.id', 'crew_card.company_id')
    .select([
      'company.id as company',
      'company.name as companyName',
      'person.id as person',
      'person.name',
      'person.email',
      'person.login_id as login',
      'crew_card.expires_at as expiresAt',
    ])
    .where('digest', '=', digestOf(secret))
    .where('used_at', 'is', null)
    .where('revoked_at', 'is', null)
    .where('crew_card.expires_at', '>', at)
    .where('person.left_at', 'is', null)
    .executeTakeFirst();
}

/**
 * Uses a card up for a login, which is then the person's; false where the card does not work any more,
 * as when it was used a moment ago.
 */
export async function use(
  db: Db,
  { company, person }: Pick<Invitation, 'company' | 'person'>,
  { secret, login, at }: { readonly secret: string; readonly login: string; readonly at: string },
): Promise<boolean> {
  return inTurn(db, company, async (trx) => {
    if (!(await invitation(trx, secret, at))) return false;
    const used = await trx
      .updateTable('crew_card')
      .set({ used_at: at })
      .where('digest', '=', digestOf(secret))
      .where('used_at', 'is', null)
      .returning('id')
      .executeTakeFirst();
    if (!used) return false;
    await trx.updateTable('person').set({ login_id: login }).where('id', '=', person).execute();
    const doer: Doer = { company, actor: person, at };
    const detail = { card: used.id };
    await append(trx, doer, { action: 'use crew card', subject: person, detail });
    return true;
  });
}
