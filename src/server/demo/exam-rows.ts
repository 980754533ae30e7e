import type { Insertable } from 'kysely';
import type { Db } from '../database/open-database.ts';
import type { Tables } from '../database/tables.ts';

type Row<T extends keyof Tables> = Insertable<Tables[T]>;

/** What the invented examinations leave in the records, until it is written. */
export type ExamRows = {
  readonly application: Row<'application'>[];
  readonly part_result: Row<'part_result'>[];
  readonly item_response: Row<'item_response'>[];
  /** By what tells one from another. */
  readonly involvement: Map<string, Row<'involvement'>>;
  readonly ruling: Row<'ruling'>[];
  readonly certificate: Row<'certificate'>[];
};

export const blankRows = (): ExamRows => ({
  application: [],
  part_result: [],
  item_response: [],
  involvement: new Map(),
  ruling: [],
  certificate: [],
});

/** In one statement no more than a database takes. */
const atOnce = 500;

export const write = (db: Db, rows: ExamRows): Promise<void> =>
  db.transaction().execute(async (trx) => {
    for (const some of slices(rows.application)) {
      await trx.insertInto('application').values(some).execute();
    }
    for (const some of slices(rows.part_result)) {
      await trx.insertInto('part_result').values(some).execute();
    }
    for (const some of slices(rows.item_response)) {
      await trx.insertInto('item_response').values(some).execute();
    }
    for (const some of slices([...rows.involvement.values()])) {
      await trx.insertInto('involvement').values(some).execute();
    }
    for (const some of slices(rows.ruling)) {
      await trx.insertInto('ruling').values(some).execute();
    }
    for (const some of slices(rows.certificate)) {
      await trx.insertInto('certificate').values(some).execute();
    }
  });

/** So many that one statement takes them. */
export const slices = <T>(all: readonly T[]): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(all.length / atOnce) }, (_, at) =>
    all.slice(at * atOnce, (at + 1) * atOnce),
  );
