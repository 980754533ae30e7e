/**
 * The answers to one part as the statistics take them. Of somebody who sat it more than once the first
 * time counts: tries of one person hang together, and later ones were learned for.
 */
import { absent, type Responses } from '#engine/statistics/responses.ts';
import type { Db } from '../database/open-database.ts';

export type PartKey = { readonly company: string; readonly scheme: string; readonly part: string };

export type Sat = {
  readonly id: string;
  readonly person: string;
  readonly on: string;
  readonly result: string;
  readonly share: number | null;
  readonly language: string | null;
  readonly crew: string | null;
};

/** Every released result that was not voided, the earliest first. */
export const satIn = (db: Db, { company, scheme, part }: PartKey): Promise<readonly Sat[]> =>
  db
    .selectFrom('part_result')
    .innerJoin('person', 'person.id', 'part_result.person_id')
    .leftJoin('crew', 'crew.id', 'person.crew_id')
    .select([
      'part_result.id',
      'part_result.person_id as person',
      'part_result.on_date as on',
      'part_result.result',
      'part_result.share',
      'person.language',
      'crew.name as crew',
    ])
    .where('part_result.company_id', '=', company)
    .where('part_result.scheme', '=', scheme)
    .where('part_result.part', '=', part)
    .where('part_result.released_at', 'is not', null)
    .where('part_result.result', '!=', 'void')
    .orderBy('part_result.on_date')
    .orderBy('part_result.made_at')
    .orderBy('part_result.id')
    .execute();

/** Of each person the first. */
export function firstTries(sat: readonly Sat[]): readonly Sat[] {
  const seen = new Set<string>();
  return sat.filter(({ person }) => {
    const isFirst = !seen.has(person);
    seen.add(person);
    return isFirst;
  });
}

export type PartAnswers = {
  readonly responses: Responses;
  /** By row of the responses. */
  readonly sittings: readonly string[];
  /** By row, the columns of what that person was asked, in ascending order. */
  readonly asked: readonly (readonly number[])[];
  /** By column. */
  readonly items: readonly { readonly id: string; readonly topic: string; readonly open: number }[];
};

/** One that was left open is neither right nor wrong here, though it earned nothing. */
export async function answersTo(
  db: Db,
  { company, scheme, part }: PartKey,
  first: readonly Sat[],
): Promise<PartAnswers> {
  const rows = await db
    .selectFrom('item_response')
    .select(['sitting_id as sitting', 'item', 'topic', 'was_answered', 'is_right'])
    .where('company_id', '=', company)
    .where('scheme', '=', scheme)
    .where('part', '=', part)
    .orderBy('item')
    .execute();
  const counted = new Set(first.map(({ id }) => id));
  const own = rows.filter(({ sitting }) => counted.has(sitting));
  const sittings = [...new Set(own.map(({ sitting }) => sitting))].toSorted();
  const rowOf = new Map(sittings.map((id, place) => [id, place]));
  const items: { id: string; topic: string; open: number }[] = [];
  for (const { item, topic } of own) {
    if (items.at(-1)?.id !== item) items.push({ id: item, topic, open: 0 });
  }
  const columnOf = new Map(items.map(({ id }, place) => [id, place]));
  const scores = new Uint8Array(sittings.length * items.length).fill(absent);
  const asked = sittings.map((): number[] => []);
  for (const { sitting, item, was_answered, is_right } of own) {
    const [row, column] = [rowOf.get(sitting)!, columnOf.get(item)!];
    asked[row]!.push(column);
    if (was_answered === 1) scores[row * items.length + column] = is_right;
    else items[column]!.open += 1;
  }
  const responses = { persons: sittings.length, items: items.length, scores };
  return { responses, sittings, asked, items };
}
