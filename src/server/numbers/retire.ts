/**
 * Questions, families of problems, and walls that a company asks no more. From then on no form holds them;
 * what was sat before keeps its content, its answers and its result.
 */
import type { Content } from '#engine/compile/content.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { append } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { type Act, doerOf } from '../people/member.ts';
import { questionTexts } from './question-lines.ts';

export const longestReason = 500;

export type Retired = {
  readonly item: string;
  readonly because: string;
  readonly at: string;
  readonly by: string;
};

/** `ABSENT`: there is no such question. `REASON`: none is given, or one too long. */
export type RetireFault = 'ABSENT' | 'REASON';

export const retiredIn = (db: Db, company: string): Promise<readonly Retired[]> =>
  db
    .selectFrom('retired_item')
    .innerJoin('person', 'person.id', 'retired_item.by_person_id')
    .select(['retired_item.item', 'retired_item.because', 'retired_item.at', 'person.name as by'])
    .where('retired_item.company_id', '=', company)
    .orderBy('retired_item.at', 'desc')
    .execute();

/** Retired a second time it stays as it was. */
export async function retire(
  db: Db,
  act: Act,
  content: Content,
  { item, because: given }: { readonly item: string; readonly because: string },
): Promise<Result<true, RetireFault>> {
  const because = given.normalize('NFC').trim();
  if (because === '' || because.length > longestReason) return fault('REASON');
  if (!questionTexts(content).has(item)) return fault('ABSENT');
  const { company, person } = act.by;
  return inTurn(db, company, async (trx) => {
    const made = await trx
      .insertInto('retired_item')
      .values({ company_id: company, item, by_person_id: person, because, at: act.at })
      .onConflict((conflict) => conflict.columns(['company_id', 'item']).doNothing())
      .returning('item')
      .executeTakeFirst();
    if (made) {
      const deed = { action: 'retire question', subject: item, detail: { because } };
      await append(trx, doerOf(act), deed);
    }
    return ok(true);
  });
}

/** Asked again from the next form on. */
export const takeBack = (db: Db, act: Act, item: string): Promise<Result<true, 'ABSENT'>> =>
  inTurn(db, act.by.company, async (trx) => {
    const gone = await trx
      .deleteFrom('retired_item')
      .where('company_id', '=', act.by.company)
      .where('item', '=', item)
      .returning('because')
      .executeTakeFirst();
    if (!gone) return fault('ABSENT');
    const deed = { action: 'take question back', subject: item, detail: gone };
    await append(trx, doerOf(act), deed);
    return ok(true);
  });
