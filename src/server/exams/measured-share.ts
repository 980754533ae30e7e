import { fewest } from '#engine/statistics/enough.ts';
import { expectedShare } from '#engine/written/expected-share.ts';
import type { Question } from '#engine/written/question.ts';
import type { Db } from '../database/open-database.ts';

type Series = Readonly<Record<'company' | 'scheme' | 'part', string>>;

type ShareOf = (question: Pick<Question, 'id' | 'difficulty'>) => number;

/**
 * What share is expected to get a question right in this part: what its released answers show, once there
 * are enough of them, and until then what its author says. One scale: both are shares right.
 */
export async function shareRight(db: Db, { company, scheme, part }: Series): Promise<ShareOf> {
  const rows = await db
    .selectFrom('item_response')
    .select(({ fn }) => [
      'item',
      fn.countAll().as('answers'),
      fn.sum<number | string>('is_right').as('right'),
    ])
    .where('company_id', '=', company)
    .where('scheme', '=', scheme)
    .where('part', '=', part)
    .where('was_answered', '=', 1)
    .groupBy('item')
    .execute();
  const measured = new Map(
    rows
      .filter(({ answers }) => Number(answers) >= fewest.proportion)
      .map(({ item, answers, right }) => [item, Number(right) / Number(answers)]),
  );
  return ({ id, difficulty }) => measured.get(id) ?? expectedShare[difficulty];
}
