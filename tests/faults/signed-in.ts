import { found } from '#server/companies/companies.ts';
import type { Database, Db } from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';
import { openAuth } from '#server/logins/auth.ts';
import { create, signIn } from '#server/logins/logins.ts';
import { sessionCookie } from '#server/logins/session.ts';
import { addPerson } from '../server/people/staff.ts';
import { keptProblem } from '../server/attempts/kept.ts';

const password = 'a long password';

export type Someone = { readonly person: string; readonly email: string; readonly cookie: string };
export type Company = {
  readonly company: string;
  readonly office: Someone;
  readonly apprentices: readonly Someone[];
  /** A problem that all of them are given, to be done any number of times. */
  readonly work: string;
};

export const family = 'fasteners-one-bar';

async function giveWork(db: Db, company: string, people: readonly string[]): Promise<string> {
  const [assignment, work] = [freshId(), freshId()];
  const at = '2020-01-01T00:00:00.000Z';
  await db
    .insertInto('assignment')
    .values({
      id: assignment,
      company_id: company,
      title: 'Fasteners',
      made_by: company,
      made_at: at,
      opens_at: at,
    })
    .execute();
  await db
    .insertInto('assignment_work')
    .values({
      id: work,
      assignment_id: assignment,
      place: 0,
      kind: 'takeoff',
      subject: JSON.stringify({ family }),
      pass: 80,
      count: 3,
    })
    .execute();
  await db
    .insertInto('assignment_for')
    .values(people.map((person_id) => ({ assignment_id: assignment, person_id })))
    .execute();
  return work;
}

/** Who makes logins and signs them in; nobody is a person of a company yet. */
export async function signingIn(records: Database) {
  const { db } = records;
  const auth = await openAuth(records);
  return async (name: string) => {
    const email = `${freshId()}@example.test`;
    const made = await create(auth, { name, email, password });
    if (!made.ok) throw new Error('no login');
    const from = { address: '192.0.2.1', agent: 'a test' };
    const signed = await signIn({ auth, db }, { name: email, password }, from, new Date());
    if (!signed.ok) throw new Error('no session');
    const cookie = `${sessionCookie}=${encodeURIComponent(signed.value.cookie)}`;
    return { login: made.value, email, cookie };
  };
}

/** A company whose office and apprentices are signed in; the records are open to nobody afterwards. */
export async function signedInCompany(records: Database, apprentices = 3): Promise<Company> {
  const { db } = records;
  const signedIn = await signingIn(records);
  const { login, ...office } = await signedIn('Olga Office');
  const { company, person } = await found(db, {
    name: 'North Wall',
    office: 'Olga Office',
    login,
    at: new Date().toISOString(),
  });
  const people: Someone[] = [];
  for (let made = 0; made < apprentices; made += 1) {
    const id = freshId();
    const { login: theirs, ...session } = await signedIn(`Apprentice ${made}`);
    await addPerson(records, company, {
      id,
      name: `Apprentice ${made}`,
      login: theirs,
      roles: 'apprentice',
    });
    people.push({ person: id, ...session });
  }
  const work = await giveWork(
    db,
    company,
    people.map(({ person: id }) => id),
  );
  return { company, office: { person, ...office }, apprentices: people, work };
}

export type Submission = {
  readonly kind: 'takeoff';
  readonly kept: ReturnType<typeof keptProblem>;
  readonly work?: string;
};

const samples = Array.from({ length: 8 }, (_, n) => keptProblem(family, `${n >> 1}`, n % 2 === 0));

/** Another attempt every time, some for the work that was given. */
export const submission = (count: number, work?: string): Submission => ({
  kind: 'takeoff',
  kept: { ...samples[count % samples.length]!, id: freshId(), at: new Date().toISOString() },
  ...(work && count % 3 === 0 ? { work } : {}),
});

export const post = (
  address: string,
  { company, cookie }: { readonly company: string; readonly cookie: string },
  attempts: readonly unknown[],
  milliseconds = 20_000,
): Promise<Response> =>
  fetch(`${address}/company/${company}/attempts`, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      accept: 'application/json',
      origin: address,
      cookie,
    },
    body: JSON.stringify({ attempts }),
    signal: AbortSignal.timeout(milliseconds),
  });

/** The office makes a crew, which the audit trail takes down. */
export const makeCrew = (
  address: string,
  { company, office }: Pick<Company, 'company' | 'office'>,
  name: string,
  milliseconds = 20_000,
): Promise<Response> =>
  fetch(`${address}/company/${company}/crews?/create`, {
    method: 'POST',
    headers: {
      'content-type': 'application/x-www-form-urlencoded',
      accept: 'application/json',
      origin: address,
      cookie: office.cookie,
      'x-sveltekit-action': 'true',
    },
    body: new URLSearchParams({ name }).toString(),
    signal: AbortSignal.timeout(milliseconds),
  });
