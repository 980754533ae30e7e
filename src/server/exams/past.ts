import type { IsoDate } from '#engine/calendar.ts';
import type { PartId, Scheme, SchemeId } from '#engine/exam/scheme.ts';
import type { Past, Tried } from '#engine/exam/standing.ts';
import type { Db } from '../database/open-database.ts';

/** The day of an instant, in UTC: the one calendar that all records of an examination go by. */
export const dayOf = (at: string): IsoDate => at.slice(0, 10) as IsoDate;

/**
 * What is known of a candidate: the results of this scheme's parts that were released, and every
 * certificate that is in force. A suspended or withdrawn one is not held.
 */
export async function pastOf(db: Db, person: string, scheme: Pick<Scheme, 'id'>): Promise<Past> {
  const results = await db
    .selectFrom('part_result')
    .select(['part', 'on_date', 'result'])
    .where('person_id', '=', person)
    .where('scheme', '=', scheme.id)
    .where('released_at', 'is not', null)
    .orderBy('on_date')
    .execute();
  const certificates = await db
    .selectFrom('certificate')
    .select(['scheme', 'valid_until'])
    .where('person_id', '=', person)
    .where('state', '=', 'in-force')
    .orderBy('valid_until')
    .execute();
  return {
    tried: results.map(({ part, on_date, result }) => ({
      part: part as PartId,
      on: on_date as IsoDate,
      result: result as Tried['result'],
    })),
    // The last of several stands: it was granted when the others ran out.
    held: new Map(
      certificates.map((one) => [one.scheme as SchemeId, one.valid_until as IsoDate] as const),
    ),
  };
}
