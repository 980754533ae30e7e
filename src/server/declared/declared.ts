/**
 * Certificates issued elsewhere, declared and not verified. They stand beside a person's own and count for
 * nothing: no state on the board and no place in a job rests on them.
 */
import type { Declared, DeclaredFault } from '#engine/record/declared.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { isUuid } from '#engine/uuid.ts';
import { append, type Deed } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { isPresent } from '../people/is-present.ts';
import { type Act, doerOf } from '../people/member.ts';
import { declaredFrom, type GivenDeclared, type ReadDeclared } from './declared-form.ts';

type Wanted = {
  /** Made where it was written down: the same one twice is kept once. */
  readonly id: string;
  readonly person: string;
  readonly schemes: readonly string[];
};

/** As it is kept. */
export const rowOf = (
  act: Act,
  id: string,
  person: string,
  { issuedOn, validUntil, ...rest }: ReadDeclared,
) => ({
  ...rest,
  id,
  company_id: act.by.company,
  person_id: person,
  issued_on: issuedOn,
  valid_until: validUntil,
  made_by: act.by.person,
  made_at: act.at,
  removed_by: null,
  removed_at: null,
  removed_because: null,
});

export const declaring = ({ id, person_id: person }: ReturnType<typeof rowOf>): Deed => ({
  action: 'declare certificate',
  subject: id,
  detail: { person },
});

export async function declare(
  db: Db,
  act: Act,
  { id, person, schemes }: Wanted,
  given: GivenDeclared,
): Promise<Result<true, DeclaredFault>> {
  const read = declaredFrom(given, { schemes, today: act.at.slice(0, 10) });
  if (!read.ok) return read;
  if (!isUuid(id)) return fault('ABSENT');
  const { company } = act.by;
  return inTurn(db, company, async (trx) => {
    const before = await trx
      .selectFrom('declared_certificate')
      .select(['company_id', 'person_id'])
      .where('id', '=', id)
      .executeTakeFirst();
    if (before) {
      const isSame = before.company_id === company && before.person_id === person;
      return isSame ? ok(true) : fault('ABSENT');
    }
    if (!(await isPresent(trx, company, person))) return fault('ABSENT');
    const row = rowOf(act, id, person, read.value);
    await trx.insertInto('declared_certificate').values(row).execute();
    await append(trx, doerOf(act), declaring(row));
    return ok(true);
  });
}

const longestReason = 500;

/** Takes it off the lists, with the reason; the row stays. */
export async function remove(
  db: Db,
  act: Act,
  id: string,
  because: string,
): Promise<Result<true, DeclaredFault>> {
  const reason = because.trim();
  if (reason === '' || reason.length > longestReason) return fault('reason');
  return inTurn(db, act.by.company, async (trx) => {
    const removed = await trx
      .updateTable('declared_certificate')
      .set({ removed_at: act.at, removed_by: act.by.person, removed_because: reason })
      .where('company_id', '=', act.by.company)
      .where('id', '=', id)
      .where('removed_at', 'is', null)
      .returning('person_id')
      .executeTakeFirst();
    if (!removed) return fault('ABSENT');
    const detail = { person: removed.person_id };
    await append(trx, doerOf(act), { action: 'remove declared certificate', subject: id, detail });
    return ok(true);
  });
}

/** What somebody declared, the latest first. */
export const of = (db: Db, company: string, person: string): Promise<readonly Declared[]> =>
  db
    .selectFrom('declared_certificate')
    .select(['id', 'title', 'issuer', 'number', 'scheme'])
    .select(['issued_on as issuedOn', 'valid_until as validUntil', 'made_at as madeAt'])
    .where('company_id', '=', company)
    .where('person_id', '=', person)
    .where('removed_at', 'is', null)
    .orderBy('issued_on', 'desc')
    .orderBy('id', 'desc')
    .execute();

/** How many stand written down of those who have not left. */
export async function count(db: Db, company: string): Promise<number> {
  const { all } = await db
    .selectFrom('declared_certificate')
    .innerJoin('person', 'person.id', 'person_id')
    .select(({ fn }) => fn.countAll().as('all'))
    .where('declared_certificate.company_id', '=', company)
    .where('removed_at', 'is', null)
    .where('left_at', 'is', null)
    .executeTakeFirstOrThrow();
  return Number(all);
}

/** By person, the qualifications that those not ended come nearest to; null for none of them. */
export async function nearestOf(
  db: Db,
  company: string,
  people: readonly string[],
  today: string,
): Promise<Readonly<Record<string, readonly (string | null)[]>>> {
  if (people.length === 0) return {};
  const rows = await db
    .selectFrom('declared_certificate')
    .select(['person_id as person', 'scheme'])
    .where('company_id', '=', company)
    .where('person_id', 'in', people)
    .where('removed_at', 'is', null)
    .where((eb) => eb.or([eb('valid_until', 'is', null), eb('valid_until', '>=', today)]))
    .execute();
  const found: Record<string, (string | null)[]> = {};
  for (const { person, scheme } of rows) (found[person] ??= []).push(scheme);
  return found;
}
