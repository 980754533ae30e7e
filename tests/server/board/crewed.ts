/** A company with certificates in every state, drawn by seed. */
import { addPeriod, type IsoDate } from '#engine/calendar.ts';
import { fraction, pick, randomFrom, whole } from '#engine/random.ts';
import { dayFrom } from '#server/board/records-of.ts';
import type { Db } from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';
import * as crews from '#server/people/crews.ts';
import type { Act } from '#server/people/member.ts';
import { added, at } from '../people/company.ts';

export const today = dayFrom(at);
export const daysFrom = (count: number): IsoDate =>
  addPeriod(today, { count: Math.abs(count), unit: 'days' }, count < 0 ? -1 : 1);

type Given = {
  readonly person: string;
  readonly scheme: string;
  readonly state?: string;
  readonly grantedOn?: string;
  readonly validUntil: string;
  readonly replacedBy?: string;
};

export async function certify(db: Db, act: Act, given: Given): Promise<string> {
  const id = freshId();
  await db
    .insertInto('certificate')
    .values({
      id,
      company_id: act.by.company,
      person_id: given.person,
      scheme: given.scheme,
      ruling_id: null,
      granted_on: given.grantedOn ?? '2029-01-01',
      valid_until: given.validUntil,
      state: given.state ?? 'in-force',
      replaced_by: given.replacedBy ?? null,
      made_at: act.at,
    })
    .execute();
  return id;
}

export async function apply(db: Db, act: Act, person: string, scheme: string): Promise<string> {
  const id = freshId();
  await db
    .insertInto('application')
    .values({
      id,
      company_id: act.by.company,
      person_id: person,
      scheme,
      renews: null,
      made_by: act.by.person,
      made_at: act.at,
      closed_at: null,
    })
    .execute();
  return id;
}

export const practise = (db: Db, act: Act, person: string, about: string, on: string) =>
  db
    .insertInto('standing')
    .values({
      company_id: act.by.company,
      person_id: person,
      kind: 'mockup',
      about,
      attempts: 1,
      best: 90,
      last_score: 90,
      last_at: `${on}T08:00:00.000Z`,
      tally: '{}',
    })
    .execute();

export async function crewNamed(db: Db, act: Act, name: string): Promise<string> {
  const made = await crews.create(db, act, { name });
  if (!made.ok) throw new Error(made.error);
  return made.value;
}

const states = ['in-force', 'in-force', 'in-force', 'suspended', 'withdrawn'];

/** So many people in three crews and in none. */
export async function crewed(
  db: Db,
  act: Act,
  count: number,
  schemes: readonly string[],
  methods: readonly string[],
): Promise<readonly string[]> {
  const random = randomFrom(`crewed/${count}`);
  const groups = [''];
  for (const name of ['South', 'North', 'West']) groups.push(await crewNamed(db, act, name));
  const people: string[] = [];
  for (let at = 0; at < count; at += 1) {
    const name = `${pick(random, ['Ada', 'Bo', 'Cruz', 'Dee'])} ${pick(random, ['Oak', 'Elm'])} ${at}`;
    const person = await added(db, act, { name, crew: pick(random, groups) });
    people.push(person);
    for (const scheme of schemes) {
      for (let more = whole(random, 0, 2); more > 0; more -= 1) {
        await certify(db, act, {
          person,
          scheme,
          state: pick(random, states),
          grantedOn: daysFrom(-whole(random, 1, 900)),
          validUntil: daysFrom(whole(random, -200, 700)),
          ...(fraction(random) < 0.2 ? { replacedBy: freshId() } : {}),
        });
      }
      if (fraction(random) < 0.15) await apply(db, act, person, scheme);
    }
    for (const method of methods) {
      if (fraction(random) < 0.3) {
        await practise(db, act, person, method, daysFrom(-whole(random, 0, 400)));
      }
    }
  }
  return people;
}
