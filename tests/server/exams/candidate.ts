import type { Role } from '#server/access/roles.ts';
import type { Db } from '#server/database/open-database.ts';
import { openApplication } from '#server/exams/applications.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Act } from '#server/people/member.ts';
import { content } from '../../content/walls.ts';
import { freshCompany, freshMember } from '../attempts/company.ts';

export { content };

export const at = '2030-05-01T07:30:00.000Z';
export const scheme = 'base-of-wall-installer';

/** An instant so many minutes after the one at which all begins. */
export const later = (minutes: number): string =>
  new Date(Date.parse(at) + minutes * 60_000).toISOString();

export type Staff = {
  readonly company: string;
  readonly office: Act;
  readonly examiner: Act;
  readonly candidate: Act;
};

/** A company with one of each. */
export async function examStaff(db: Db): Promise<Staff> {
  const { company } = await freshCompany(db);
  const act = async (role: Role, name: string): Promise<Act> => ({
    by: await freshMember(db, company, { roles: [role], name }),
    at,
  });
  return {
    company,
    office: await act('office', 'Olga Office'),
    examiner: await act('examiner', 'Ed Examiner'),
    candidate: await act('apprentice', 'Ana Apprentice'),
  };
}

/** The same person at another time. */
export const actAt = ({ by }: Act, minutes: number): Act => ({ by, at: later(minutes) });

export async function opened(db: Db, { office, candidate }: Staff): Promise<string> {
  const made = await openApplication(db, office, content, {
    person: candidate.by.person,
    scheme,
  });
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  return made.value;
}

type Held = { readonly scheme: string; readonly until: string; readonly state?: string };

export async function hold(
  db: Db,
  { company, candidate }: Staff,
  { scheme: of, until, state = 'in-force' }: Held,
): Promise<string> {
  const id = freshId();
  await db
    .insertInto('certificate')
    .values({
      id,
      company_id: company,
      person_id: candidate.by.person,
      scheme: of,
      granted_on: '2027-05-01',
      valid_until: until,
      state,
      made_at: at,
    })
    .execute();
  return id;
}
