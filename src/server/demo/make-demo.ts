/**
 * An invented contractor with four crews, sixty people and a year of practice, so that every screen can
 * be seen filled. Marked as invented for good, and taken away again by `removeDemo`.
 */
import { randomBytes } from 'node:crypto';
import type { Content } from '#engine/compile/content.ts';
import { isoDateFrom } from '#engine/calendar.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { type Role, rolesText } from '../access/roles.ts';
import { subjectFrom } from '../assignments/assignment-list.ts';
import { compose, withdraw } from '../assignments/assignments.ts';
import { keep } from '../attempts/attempts.ts';
import { decide } from '../attempts/decisions.ts';
import { markSent } from '../attempts/marking.ts';
import type { Ready } from '../attempts/ready.ts';
import type { Work } from '../attempts/work.ts';
import { append } from '../audit/audit-trail.ts';
import type { Database, Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';
import type { Auth } from '../logins/auth.ts';
import { create } from '../logins/logins.ts';
import { folded, searchText } from '../people/folded.ts';
import type { Member } from '../people/member.ts';
import { demoAttempts, type DemoTask, type DemoWork } from './attempts.ts';
import { commentsOn, type Remarkable } from './comments.ts';
import { makeExams } from './exams.ts';
import { crewNames, demoGuests, type DemoPerson, demoPeople, wholeSize } from './people.ts';
import { removeDemo } from './remove-demo.ts';
import { demoDrafts } from './work.ts';

export type DemoLogin = { readonly role: string; readonly username: string };
export type Demo = {
  readonly company: string;
  readonly people: number;
  readonly attempts: number;
  readonly logins: readonly DemoLogin[];
  /** The same for all of them; it is told this once. */
  readonly password: string;
};

type How = {
  readonly now: Date;
  /** Fewer people than the whole company has. */
  readonly size?: number;
  /** Told after each person. */
  readonly tell?: (done: number, all: number) => void;
};

const atOnce = 200;
const day = 24 * 60 * 60 * 1000;

/** `THERE`: it is there already, or being made here. One that was broken off is made anew. */
export async function makeDemo(
  database: Database,
  auth: Auth,
  content: Content,
  { now, size = wholeSize, tell }: How,
): Promise<Result<Demo, 'THERE'>> {
  if (underWay) return fault('THERE');
  underWay = { done: 0, all: size };
  try {
    const there = await demoCompany(database.db);
    if (there && (await isWhole(database.db, there))) return fault('THERE');
    if (there) await removeDemo(database.db, there);
    const today = Math.floor(now.getTime() / day) * day;
    const told = (done: number, all: number) => {
      underWay = { done, all };
      tell?.(done, all);
    };
    return ok(await make(database, auth, content, { today, size, tell: told }));
  } finally {
    underWay = undefined;
  }
}

export type DemoProgress = { readonly done: number; readonly all: number };

let underWay: DemoProgress | undefined;

/** How many people are done, while this process makes it. */
export const demoProgress = (): DemoProgress | undefined => underWay;

/** Logins are made last. */
const isWhole = async (db: Db, company: string): Promise<boolean> =>
  (await db
    .selectFrom('person')
    .select('id')
    .where('company_id', '=', company)
    .where('login_id', 'is not', null)
    .executeTakeFirst()) !== undefined;

type Making = {
  /** The beginning of the day, in milliseconds: what is made in one day is the same. */
  readonly today: number;
  readonly size: number;
  readonly tell: (done: number, all: number) => void;
};

async function make(
  database: Database,
  auth: Auth,
  content: Content,
  { today, size, tell }: Making,
): Promise<Demo> {
  const { db } = database;
  const began = new Date(today - 365 * day).toISOString();
  const company = freshId();
  const known = demoPeople('demo', size);
  await db
    .insertInto('company')
    .values({ id: company, name: 'Demo Flashing', is_demo: 1, created_at: began })
    .execute();
  const crews = await makeCrews(db, company, began);
  const people = await makePeople(db, company, crews, known, { began, today });
  await foundBy(db, company, people[0]!.id, began);
  const trainers = people.filter(({ person }) => person.roles.includes('trainer'));
  const learners = people.filter(({ person }) => person.roles.includes('apprentice'));
  const by = memberOf(company, trainers[0]!);
  const persons = learners
    .filter(({ person }) => person.leftDaysAgo === undefined)
    .slice(0, 2)
    .map(({ id }) => id);
  const works = await makeWork(db, content, by, { crews, persons }, today);

  const remarkable: Remarkable[] = [];
  for (const [done, learner] of learners.entries()) {
    const ready = await practiceOf(content, company, learner, works, today);
    for (let from = 0; from < ready.length; from += atOnce) {
      const batch = ready.slice(from, from + atOnce);
      await db.transaction().execute((trx) => keep(trx, database.kind, batch));
    }
    const { crew } = learner;
    const { language } = learner.person;
    for (const { id: attempt, marked, at } of ready) {
      remarkable.push({ attempt, outcome: marked.outcome, at, crew, language });
    }
    tell(done + 1, learners.length);
  }
  for (const { attempt, crew, reason, said } of commentsOn(remarkable)) {
    const trainer = trainers.find((one) => one.crew === crew) ?? trainers[0]!;
    const act = { by: memberOf(company, trainer), at: said };
    const decided = await decide(db, act, { attempt, kind: 'comment', reason });
    if (!decided.ok) throw new Error(`The invented comment is faulty: ${decided.error}`);
  }
  const guests = await makePeople(db, company, [], demoGuests('demo', size), { began, today });
  const staff = {
    offices: idsOf(people, 'office'),
    trainers,
    examiners: idsOf(people, 'examiner'),
  };
  const firstDay = isoDateFrom(new Date(today).toISOString().slice(0, 10));
  if (firstDay.ok)
    await makeExams(db, { content, company, today: firstDay.value, staff }, learners, guests);
  const password = randomBytes(9).toString('base64url');
  const logins = await makeLogins(db, auth, people, password);
  return { company, people: people.length, attempts: remarkable.length, logins, password };
}

/** So many are marked before others that wait for this process have their turn. */
const inARow = 5;

async function practiceOf(
  content: Content,
  company: string,
  { id, crew, person }: Made,
  works: readonly MadeWork[],
  today: number,
): Promise<readonly Ready[]> {
  const by = { company, person: id };
  const own = works.filter(({ to }) => to.includes(id) || (crew !== null && to.includes(crew)));
  const left = today - (person.leftDaysAgo ?? 0) * day;
  const learner = { seed: person.number, ability: person.ability, works: own, left };
  const ready: Ready[] = [];
  for (const { sent, at } of demoAttempts(content, learner, today)) {
    const marked = markSent(content, sent);
    if (!marked.ok) throw new Error(`An invented attempt is faulty: ${sent.id}`);
    const work = own.find((one) => one.id === sent.work);
    ready.push({ id: sent.id, by, kind: sent.kind, work, marked: marked.value, at });
    if (ready.length % inARow === 0) await new Promise<void>((resolve) => setImmediate(resolve));
  }
  return ready;
}

/** The invented company that is there already. */
export async function demoCompany(db: Db): Promise<string | undefined> {
  const row = await db
    .selectFrom('company')
    .select('id')
    .where('is_demo', '=', 1)
    .executeTakeFirst();
  return row?.id;
}

async function makeCrews(db: Db, company: string, at: string): Promise<readonly string[]> {
  const rows = crewNames.map((name) => ({
    id: freshId(),
    company_id: company,
    name,
    folded_name: folded(name),
    created_at: at,
  }));
  await db.insertInto('crew').values(rows).execute();
  return rows.map(({ id }) => id);
}

type Made = { readonly id: string; readonly crew: string | null; readonly person: DemoPerson };

async function makePeople(
  db: Db,
  company: string,
  crews: readonly string[],
  known: readonly DemoPerson[],
  { began: at, today }: { readonly began: string; readonly today: number },
): Promise<readonly Made[]> {
  const made = known.map((person) => ({
    id: freshId(),
    crew: person.crew === undefined ? null : crews[person.crew]!,
    person,
  }));
  await db
    .insertInto('person')
    .values(
      made.map(({ id, crew, person }) => ({
        id,
        company_id: company,
        crew_id: crew,
        name: person.name,
        number: person.number,
        roles: rolesText(person.roles),
        language: person.language,
        search: searchText(person.name, person.number),
        created_at: at,
        left_at:
          person.leftDaysAgo === undefined
            ? null
            : new Date(today - person.leftDaysAgo * day).toISOString(),
      })),
    )
    .execute();
  return made;
}

const foundBy = (db: Db, company: string, actor: string, at: string) =>
  db
    .transaction()
    .execute((trx) =>
      append(trx, { company, actor, at }, { action: 'found company', subject: company }),
    );

const idsOf = (people: readonly Made[], role: Role): readonly string[] =>
  people.filter(({ person }) => person.roles.includes(role)).map(({ id }) => id);

const memberOf = (company: string, { id, crew, person }: Made): Member => ({
  company,
  companyName: '',
  isDemo: true,
  person: id,
  name: person.name,
  roles: person.roles,
  crew,
});

/** `to` are crews and people. */
type MadeWork = DemoWork & Work & { readonly to: readonly string[] };

/** What trainers gave to do: some long past, some overdue, some under way. */
async function makeWork(
  db: Db,
  content: Content,
  by: Member,
  given: { readonly crews: readonly string[]; readonly persons: readonly string[] },
  today: number,
): Promise<readonly MadeWork[]> {
  const made: MadeWork[] = [];
  for (const { draft, at, withdrawn } of demoDrafts(content, given, today)) {
    const id = await compose(db, { by, at }, content, draft);
    if (!id.ok) throw new Error(`The invented work is faulty: ${JSON.stringify(id.error)}`);
    if (withdrawn !== undefined) {
      await withdraw(db, { by, at: withdrawn }, id.value);
      continue;
    }
    const rows = await db
      .selectFrom('assignment_work')
      .selectAll()
      .where('assignment_id', '=', id.value)
      .execute();
    for (const { id: work, kind, subject, pass, count } of rows) {
      const span = { from: Date.parse(draft.opens), until: Date.parse(draft.due) };
      const task = subjectFrom(kind, subject) as DemoTask;
      const to = [...draft.crews, ...draft.persons];
      made.push({ ...task, ...span, id: work, pass, count, to });
    }
  }
  return made;
}

async function makeLogins(
  db: Db,
  auth: Auth,
  people: readonly Made[],
  password: string,
): Promise<readonly DemoLogin[]> {
  const logins: DemoLogin[] = [];
  for (const role of ['office', 'trainer', 'examiner', 'apprentice'] as const) {
    const { id, person } = people.find(({ person: one }) => one.roles.includes(role))!;
    const username = `demo.${role}`;
    const login = await create(auth, { name: person.name, password, username });
    if (!login.ok) continue;
    await db.updateTable('person').set({ login_id: login.value }).where('id', '=', id).execute();
    logins.push({ role, username });
  }
  return logins;
}
