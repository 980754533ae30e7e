import { type RawBuilder, sql } from 'kysely';

/** So many tries in a row below the pass, and somebody is stuck. */
export const missesToBeStuck = 3;

/**
 * The one place that says who is stuck with a piece of work: it is not passed, and either no tries are left
 * or the last three were all below the pass. 1 or 0, in a query that has `assignment` and `progress`.
 */
export const isStuck: RawBuilder<number> = sql<number>`
  case when progress.passed_at is null and (
    progress.missed >= ${sql.lit(missesToBeStuck)}
    or (assignment.tries is not null and progress.tries >= assignment.tries + progress.extra)
  ) then 1 else 0 end`;
