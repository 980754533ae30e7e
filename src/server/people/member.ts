import type { Doer } from '../audit/audit-trail.ts';
import type { Db } from '../database/open-database.ts';
import { type Role, rolesFrom } from '../access/roles.ts';

/** Somebody who has signed in, as a person of one company. */
export type Member = {
  readonly company: string;
  readonly companyName: string;
  readonly isDemo: boolean;
  readonly person: string;
  readonly name: string;
  readonly roles: readonly Role[];
  readonly crew: string | null;
};

/** What somebody does something with: who, as whom, and when (an instant in ISO 8601). */
export type Act = { readonly by: Member; readonly at: string };

const membersOf = (db: Db, login: string) =>
  db
    .selectFrom('person')
    .innerJoin('company', 'company.id', 'person.company_id')
    .select([
      'company.id as company',
      'company.name as companyName',
      'company.is_demo as isDemo',
      'person.id as person',
      'person.name',
      'person.roles',
      'person.crew_id as crew',
    ])
    .where('person.login_id', '=', login)
    .where('person.left_at', 'is', null);

type Row = Awaited<ReturnType<ReturnType<typeof membersOf>['execute']>>[number];

const memberFrom = ({ isDemo, roles, ...row }: Row): Member => ({
  ...row,
  isDemo: isDemo === 1,
  roles: rolesFrom(roles),
});

/** As whom a login takes part in a company; undefined for a company that is not theirs, or not there. */
export async function memberOf(
  db: Db,
  login: string,
  company: string,
): Promise<Member | undefined> {
  const row = await membersOf(db, login).where('company.id', '=', company).executeTakeFirst();
  return row && memberFrom(row);
}

/** Every company that a login takes part in, by name. */
export async function memberships(db: Db, login: string): Promise<readonly Member[]> {
  const rows = await membersOf(db, login).orderBy('company.name').execute();
  return rows.map(memberFrom);
}

/** The same for the audit trail. */
export const doerOf = ({ by, at }: Act): Doer => ({ company: by.company, actor: by.person, at });
