/** Who signs in for the pictures, beside the logins that the invented company comes with. */
import type { Role } from '#server/access/roles.ts';
import type { Database, Db } from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Auth } from '#server/logins/auth.ts';
import { create } from '#server/logins/logins.ts';
import type { Act, Member } from '#server/people/member.ts';
import { addPerson } from '../../server/people/staff.ts';

/** `demo.…` come with the company; the others are added to it. */
export const logins = {
  office: 'demo.office',
  trainer: 'demo.trainer',
  examiner: 'demo.examiner',
  apprentice: 'demo.apprentice',
  holder: 'pictures.holder',
  refused: 'pictures.refused',
  waiting: 'pictures.waiting',
  sitting: 'pictures.sitting',
  sat: 'pictures.sat',
  two: 'pictures.two',
} as const;
export type Who = keyof typeof logins;

export type There = {
  readonly records: Database;
  readonly auth: Auth;
  readonly company: string;
  readonly password: string;
};

export async function login({ auth, password }: There, who: Who, name: string): Promise<string> {
  const made = await create(auth, { name, password, username: logins[who] });
  if (!made.ok) throw new Error(made.error);
  return made.value;
}

/** Somebody of the company who has no login yet gets one. */
export async function letIn(there: There, who: Who, person: string): Promise<void> {
  const { db } = there.records;
  const id = await login(there, who, who);
  await db.updateTable('person').set({ login_id: id }).where('id', '=', person).execute();
}

const memberWith = (company: string, person: string, name: string, role: Role): Member => ({
  company,
  companyName: 'Demo Flashing',
  isDemo: true,
  person,
  name,
  roles: [role],
  crew: null,
});

export async function newcomer(there: There, who: Who, name: string): Promise<Member> {
  const id = freshId();
  const theirs = await login(there, who, name);
  await addPerson(there.records, there.company, { id, name, login: theirs, roles: 'apprentice' });
  return memberWith(there.company, id, name, 'apprentice');
}

/** The first of the company with that role, by the order in which they were made. */
export async function firstWith(db: Db, company: string, role: Role): Promise<Act> {
  const row = await db
    .selectFrom('person')
    .select(['id', 'name'])
    .where('company_id', '=', company)
    .where('roles', '=', role)
    .where('login_id', 'is not', null)
    .executeTakeFirstOrThrow();
  return { by: memberWith(company, row.id, row.name, role), at: new Date().toISOString() };
}
