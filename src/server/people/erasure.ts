/**
 * Takes a person out of the records, so that nothing says who it was: name, number, cards, and the login
 * with its sessions, unless another company knows the same login, and photos of their work, which may show
 * them; certificates are withdrawn and what was put on paper of them goes, for they would be about nobody.
 * What they tried, how it was judged and what was decided stays under an identifier that stands for nobody,
 * for marks and the audit trail outlive a name.
 */
import { fault, ok, type Result } from '#engine/result.ts';
import { append, type Doer } from '../audit/audit-trail.ts';
import { rolesFrom } from '../access/roles.ts';
import { withdrawErased } from '../certificates/withdraw-erased.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { officeWithout } from './people.ts';

/** `ERASED_BEFORE`: nothing was changed, for nothing was left. */
export type Erasure = 'ERASED' | 'ERASED_BEFORE';
export type ErasureFault = 'UNKNOWN_PERSON' | 'LAST_OFFICE';

/** Takes away a login that no person has any more, and what was counted under its names. */
export async function dropLogin(trx: Db, login: string): Promise<void> {
  const known = await trx
    .selectFrom('person')
    .select('id')
    .where('login_id', '=', login)
    .limit(1)
    .executeTakeFirst();
  if (known) return;
  const names = await trx
    .selectFrom('login')
    .select(['email', 'username'])
    .where('id', '=', login)
    .executeTakeFirst();
  const keys = [names?.email, names?.username]
    .filter((name) => typeof name === 'string')
    .map((name) => `sign-in/${name}`);
  if (keys.length > 0) await trx.deleteFrom('throttle').where('key', 'in', keys).execute();
  await trx.deleteFrom('session').where('userId', '=', login).execute();
  await trx.deleteFrom('sign_in_way').where('userId', '=', login).execute();
  await trx.deleteFrom('login').where('id', '=', login).execute();
}

const nobody = {
  name: '',
  number: null,
  search: '',
  roles: '',
  language: null,
  email: null,
  crew_id: null,
  login_id: null,
};

export const erase = (db: Db, doer: Doer, person: string): Promise<Result<Erasure, ErasureFault>> =>
  inTurn(db, doer.company, async (trx) => {
    const { company, at } = doer;
    const found = await trx
      .selectFrom('person')
      .select(['login_id', 'roles', 'erased_at'])
      .where('company_id', '=', company)
      .where('id', '=', person)
      .executeTakeFirst();
    if (!found) return fault('UNKNOWN_PERSON');
    if (found.erased_at !== null) return ok('ERASED_BEFORE');
    const isOffice = rolesFrom(found.roles).includes('office');
    if (isOffice && !(await officeWithout(trx, company, [person]))) return fault('LAST_OFFICE');
    await append(trx, doer, { action: 'erase person', subject: person });
    await withdrawErased(trx, doer, person);
    await trx.deleteFrom('crew_card').where('person_id', '=', person).execute();
    await trx.deleteFrom('assignment_for').where('person_id', '=', person).execute();
    await trx.deleteFrom('declared_certificate').where('person_id', '=', person).execute();
    await trx.deleteFrom('job_person').where('person_id', '=', person).execute();
    await trx
      .updateTable('person')
      .set({ ...nobody, left_at: at, erased_at: at })
      .where('id', '=', person)
      .execute();
    // After it is known that they were erased, as photos of signed checks go for no other reason.
    const checks = trx.selectFrom('hands_on_check').select('id').where('person_id', '=', person);
    await trx.deleteFrom('check_photo').where('check_id', 'in', checks).execute();
    if (found.login_id !== null) await dropLogin(trx, found.login_id);
    return ok('ERASED');
  });

/** The company that a person belongs to; undefined for an identifier that stands for nobody known. */
export async function companyOf(db: Db, person: string): Promise<string | undefined> {
  const row = await db
    .selectFrom('person')
    .select('company_id')
    .where('id', '=', person)
    .executeTakeFirst();
  return row?.company_id;
}
