/**
 * Kysely on Node's own SQLite. One connection, so a query outside a running transaction waits for its
 * end: inside a transaction use the transaction alone, or it waits for itself.
 */
import { DatabaseSync, type SQLInputValue, type StatementSync } from 'node:sqlite';
import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  SqliteAdapter,
  type SqliteDialectConfig,
  SqliteDriver,
  SqliteIntrospector,
  SqliteQueryCompiler,
} from 'kysely';

const keptStatements = 500;

/** What SQLite can take of a value: nothing for undefined, 0 and 1 for truth, ISO 8601 for an instant. */
function bound(value: unknown): SQLInputValue {
  if (value === undefined) return null;
  if (typeof value === 'boolean') return value ? 1 : 0;
  return value instanceof Date ? value.toISOString() : (value as SQLInputValue);
}

/** Statements are prepared once; the least used of many is let go. */
function statementsOf(database: DatabaseSync): (sql: string) => StatementSync {
  const kept = new Map<string, StatementSync>();
  return (sql) => {
    const statement = kept.get(sql) ?? database.prepare(sql);
    kept.delete(sql);
    kept.set(sql, statement);
    if (kept.size > keptStatements) kept.delete(kept.keys().next().value!);
    return statement;
  };
}

/** Takes the right to write at once: a transaction that first reads could not take it later. */
class WritingDriver extends SqliteDriver {
  readonly #isInTransaction: () => boolean;

  constructor(config: SqliteDialectConfig, isInTransaction: () => boolean) {
    super(config);
    this.#isInTransaction = isInTransaction;
  }

  /** A full disk ends a transaction by itself; what went wrong is then told, and not that it ended. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#isInTransaction()) await super.rollbackTransaction(connection);
  }

  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }
}

/** A dialect on an open database; it is closed with Kysely's `destroy`. */
export function sqliteDialect(database: DatabaseSync): Dialect {
  const prepared = statementsOf(database);
  const adapted = {
    close: () => database.close(),
    prepare: (sql: string) => {
      const statement = prepared(sql);
      return {
        reader: statement.columns().length > 0,
        all: (values: readonly unknown[]) => statement.all(...values.map(bound)),
        run: (values: readonly unknown[]) => statement.run(...values.map(bound)),
        iterate: (values: readonly unknown[]) => statement.iterate(...values.map(bound)),
      };
    },
  };
  return {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new WritingDriver({ database: adapted }, () => database.isTransaction),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  };
}

/**
 * Pages kept in memory, as they are read: SQLite's own 2,000 KiB hold less than one page of the people of
 * a company of 20,000 touches in turn (tests/bench/growth.ts: 0.53 ms to 0.43).
 */
const cacheKibibytes = 65_536;

/**
 * Opens a file, or makes it. A write that was answered survives a power cut (`synchronous=full`);
 * readers and the writer do not wait for each other (write-ahead log).
 */
export function openSqlite(file: string): DatabaseSync {
  const database = new DatabaseSync(file, { timeout: 5000 });
  database.exec('pragma journal_mode = wal');
  database.exec('pragma synchronous = full');
  database.exec('pragma foreign_keys = on');
  database.exec(`pragma cache_size = ${-cacheKibibytes}`);
  return database;
}

/** Opens a file that is there, to read it and no more. Throws where there is none. */
export const readSqlite = (file: string): DatabaseSync =>
  new DatabaseSync(file, { timeout: 5000, readOnly: true });
