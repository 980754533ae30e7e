import type { CompiledQuery } from 'kysely';
import type { Kind } from '#server/database/kind.ts';
import type { Db } from '#server/database/open-database.ts';

/** How the database means to answer a query, in its own words. */
export async function plan(db: Db, kind: Kind, { sql, ...compiled }: CompiledQuery) {
  const explain = kind === 'sqlite' ? 'explain query plan ' : 'explain ';
  const { rows } = await db.executeQuery<Record<string, unknown>>({
    ...compiled,
    sql: explain + sql,
  });
  return rows.map((row) => String(row['detail'] ?? row['QUERY PLAN'])).join('\n');
}
