import { append } from '../audit/audit-trail.ts';
import type { Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';
import { searchText } from '../people/folded.ts';
import { rolesText } from '../access/roles.ts';

export async function isAny(db: Db): Promise<boolean> {
  return (await db.selectFrom('company').select('id').limit(1).executeTakeFirst()) !== undefined;
}

/** Whether a company works with this server; one that was invented does not. */
export async function isAnyReal(db: Db): Promise<boolean> {
  const real = db.selectFrom('company').select('id').where('is_demo', '=', 0).limit(1);
  return (await real.executeTakeFirst()) !== undefined;
}

type New = {
  readonly name: string;
  readonly office: string;
  readonly login: string;
  readonly at: string;
  readonly isDemo?: boolean;
};

/** A company with the person who keeps its office, and the first entry of its audit trail. */
export async function found(
  db: Db,
  { name, office, login, at, isDemo = false }: New,
): Promise<{ readonly company: string; readonly person: string }> {
  const [company, person] = [freshId(), freshId()];
  await db.transaction().execute(async (trx) => {
    await trx
      .insertInto('company')
      .values({ id: company, name, is_demo: isDemo ? 1 : 0, created_at: at })
      .execute();
    await trx
      .insertInto('person')
      .values({
        id: person,
        company_id: company,
        login_id: login,
        name: office,
        roles: rolesText(['trainer', 'office']),
        search: searchText(office, null),
        created_at: at,
      })
      .execute();
    await append(
      trx,
      { company, actor: person, at },
      { action: 'found company', subject: company },
    );
  });
  return { company, person };
}
