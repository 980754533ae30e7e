import { found } from '#server/companies/companies.ts';
import type { Role } from '#server/access/roles.ts';
import type { Db } from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Act } from '#server/people/member.ts';
import * as people from '#server/people/people.ts';

export const at = '2030-05-01T07:30:00.000Z';

/** Somebody of a company doing something. */
export const actOf = (
  company: string,
  person: string,
  roles: readonly Role[] = ['trainer', 'office'],
): Act => ({
  at,
  by: {
    company,
    companyName: 'Test company',
    isDemo: false,
    person,
    name: 'Office',
    roles,
    crew: null,
  },
});

/** A company with nobody but who keeps its office, who can sign in. */
export async function freshCompany(db: Db): Promise<Act> {
  const { company, person } = await found(db, {
    name: 'Test company',
    office: 'Office',
    login: freshId(),
    at,
  });
  return actOf(company, person);
}

const blank = { number: '', roles: ['apprentice' as Role], crew: '', language: '', email: '' };

/** Somebody new in the company, by id. */
export async function added(
  db: Db,
  act: Act,
  given: { readonly name: string } & Partial<Parameters<typeof people.create>[2]>,
): Promise<string> {
  const made = await people.create(db, act, { ...blank, ...given });
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  return made.value;
}

/** What the audit trail says of a subject, or of everything. */
export async function deeds(db: Db, company: string, subject?: string): Promise<readonly string[]> {
  const all = db.selectFrom('audit_entry').where('company_id', '=', company);
  const some = subject === undefined ? all : all.where('subject', '=', subject);
  const rows = await some.select('action').orderBy('place').execute();
  return rows.map(({ action }) => action);
}
