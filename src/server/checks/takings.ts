import type { Db } from '../database/open-database.ts';

/** One examiner's place in a taking of a part, which is over once the part has a result by its id. */
export type Place = {
  readonly id: string;
  readonly taking: string;
  readonly place: number;
  readonly examiner: string;
  readonly signedAt: string | null;
  readonly content_revision: string;
};

/** Of the taking that is under way, by place; none where there is none. */
export const placesUnderWay = (
  db: Db,
  application: string,
  part: string,
): Promise<readonly Place[]> =>
  db
    .selectFrom('hands_on_check')
    .leftJoin('part_result', 'part_result.id', 'hands_on_check.taking_id')
    .select([
      'hands_on_check.id',
      'hands_on_check.taking_id as taking',
      'hands_on_check.place',
      'hands_on_check.examiner_id as examiner',
      'hands_on_check.signed_at as signedAt',
      'hands_on_check.content_revision',
    ])
    .where('hands_on_check.application_id', '=', application)
    .where('hands_on_check.part', '=', part)
    .where('part_result.id', 'is', null)
    .orderBy('hands_on_check.place')
    .execute();

export const isOver = async (db: Db, taking: string): Promise<boolean> =>
  (await db.selectFrom('part_result').select('id').where('id', '=', taking).executeTakeFirst()) !==
  undefined;
