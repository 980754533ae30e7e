import { type RawBuilder, sql } from 'kysely';

/**
 * A text column to compare with, that no index on it is taken for. Without statistics SQLite holds every
 * index to be as narrow as any other, and goes through a whole company where a few rows are named ("The
 * SQLite Query Optimizer Overview", sqlite.org/optoverview.html: terms with an operator use no index).
 */
export const besideIndex = (column: string): RawBuilder<string> =>
  sql<string>`(${sql.ref(column)} || '')`;
