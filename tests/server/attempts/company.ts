import { found } from '#server/companies/companies.ts';
import type { Db } from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';
import { searchText } from '#server/people/folded.ts';
import type { Member } from '#server/people/member.ts';

export const at = '2030-05-01T07:30:00.000Z';

/** A company with its office. */
export async function freshCompany(db: Db): Promise<{ company: string; office: string }> {
  const name = 'Test company';
  const { company, person } = await found(db, { name, office: 'Office', login: freshId(), at });
  return { company, office: person };
}

/** Somebody of a company, as signed in. */
export async function freshMember(
  db: Db,
  company: string,
  {
    roles = ['apprentice'],
    crew = null,
    name = 'Apprentice',
  }: Partial<Pick<Member, 'roles' | 'crew' | 'name'>> = {},
): Promise<Member> {
  const person = freshId();
  await db
    .insertInto('person')
    .values({
      id: person,
      company_id: company,
      crew_id: crew,
      login_id: freshId(),
      name,
      roles: roles.join(' '),
      search: searchText(name, null),
      created_at: at,
    })
    .execute();
  return { company, companyName: 'Test company', isDemo: false, person, name, roles, crew };
}
