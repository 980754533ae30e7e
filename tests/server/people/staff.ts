import { found } from '#server/companies/companies.ts';
import type { Database } from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';
import { type Auth, openAuth } from '#server/logins/auth.ts';
import { create, signIn } from '#server/logins/logins.ts';
import { searchText } from '#server/people/folded.ts';

export const at = '2030-05-01T07:30:00.000Z';
export const password = 'a long password';

/** A company with its office signed in, one crew and one apprentice with a number, a login and a card. */
export async function staff(records: Database, auth?: Auth) {
  const { db } = records;
  const library = auth ?? (await openAuth(records));
  const login = async (name: string) => {
    const email = `${freshId()}@example.invalid.test`;
    const made = await create(library, { name, email, password });
    if (!made.ok) throw new Error('no login');
    return { id: made.value, email };
  };
  const office = await login('Olga Office');
  const { company, person } = await found(db, {
    name: 'North Wall',
    office: 'Olga Office',
    login: office.id,
    at,
  });
  const crew = freshId();
  await db
    .insertInto('crew')
    .values({ id: crew, company_id: company, name: 'Crew 1', created_at: at })
    .execute();
  const theirs = await login('Ana Apprentice');
  const apprentice = freshId();
  await addPerson(records, company, {
    id: apprentice,
    name: 'Ana Apprentice',
    number: 'B-17',
    login: theirs.id,
    crew,
    roles: 'apprentice',
  });
  await db
    .insertInto('crew_card')
    .values({
      id: freshId(),
      company_id: company,
      person_id: apprentice,
      digest: `digest-${apprentice}`,
      made_by: person,
      made_at: at,
      expires_at: '2030-06-01T00:00:00.000Z',
    })
    .execute();
  const signed = await signIn(
    { auth: library, db },
    { name: theirs.email, password },
    { address: '192.0.2.1', agent: 'a phone' },
    new Date(at),
  );
  if (!signed.ok) throw new Error('no session');
  return { company, office: person, apprentice, crew, login: theirs, auth: library };
}

type NewPerson = {
  readonly id: string;
  readonly name: string;
  readonly number?: string;
  readonly login?: string;
  readonly crew?: string;
  readonly roles: string;
};

export const addPerson = (
  { db }: Database,
  company: string,
  { id, name, number, login, crew, roles }: NewPerson,
) =>
  db
    .insertInto('person')
    .values({
      id,
      company_id: company,
      crew_id: crew ?? null,
      login_id: login ?? null,
      name,
      number: number ?? null,
      email: number ? `${number}@office.example` : null,
      roles,
      search: searchText(name, number ?? null),
      created_at: at,
    })
    .execute();

/** An attempt with its mark and a word about it. */
export async function addAttempt(
  { db }: Database,
  {
    company,
    office,
    apprentice,
  }: Pick<Awaited<ReturnType<typeof staff>>, 'company' | 'office' | 'apprentice'>,
): Promise<string> {
  const attempt = freshId();
  await db
    .insertInto('attempt')
    .values({
      id: attempt,
      company_id: company,
      person_id: apprentice,
      kind: 'mockup',
      about: 'base-of-wall',
      played: '{"steps":[]}',
      finished_at: at,
      received_at: at,
      content_revision: 'r',
    })
    .execute();
  await db
    .insertInto('mark')
    .values({
      attempt_id: attempt,
      content_revision: 'r',
      marked_at: at,
      score: 90,
      outcome: 'accept',
      detail: '{"lines":[]}',
    })
    .execute();
  await db
    .insertInto('decision')
    .values({
      id: freshId(),
      company_id: company,
      attempt_id: attempt,
      kind: 'comment',
      reason: 'Well done.',
      decided_by: office,
      decided_at: at,
    })
    .execute();
  return attempt;
}

/** Every row of every table, as one text: what is nowhere in it is nowhere in the records. */
export async function allText({ db }: Database): Promise<string> {
  const tables = await db.introspection.getTables();
  const rows = await Promise.all(
    tables.map(({ name }) =>
      db
        .selectFrom(name as 'person')
        .selectAll()
        .execute(),
    ),
  );
  return JSON.stringify(rows);
}
