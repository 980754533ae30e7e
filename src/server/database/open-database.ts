import { existsSync, mkdirSync } from 'node:fs';
import type { DatabaseSync } from 'node:sqlite';
import { join } from 'node:path';
import { Kysely, PostgresDialect, sql } from 'kysely';
import { Migrator } from 'kysely/migration';
import { Pool } from 'pg';
import type { Kind } from './kind.ts';
import { migrationsFor } from './migrations.ts';
import { openSqlite, readSqlite, sqliteDialect } from './sqlite-dialect.ts';
import type { Tables } from './tables.ts';

export type Db = Kysely<Tables>;

/** An open database; `close` waits for what is under way. */
export type Database = {
  readonly db: Db;
  readonly kind: Kind;
  readonly close: () => Promise<void>;
};

/** Where the records are kept: a file in a folder, or a server's address. */
export type Place = { readonly folder: string } | { readonly url: string };

// Enough to keep the server's disk busy; two processes stay under its usual limit of 100.
const connections = 20;

export const sqliteFile = (folder: string): string => join(folder, 'underlap.sqlite');

/** Records in an open SQLite, which closes with them. */
export function recordsIn(sqlite: DatabaseSync): Database {
  const db: Db = new Kysely({ dialect: sqliteDialect(sqlite) });
  return { db, kind: 'sqlite', close: () => db.destroy() };
}

function fileIn(folder: string): Database {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  return recordsIn(openSqlite(sqliteFile(folder)));
}

function serverAt(url: string): Database {
  const pool = new Pool({ connectionString: url, max: connections });
  // A connection lost while nobody uses it is taken out of the pool; the next query opens another.
  pool.on('error', () => undefined);
  // One lost while it is used also fails the query under way, which tells whoever asked.
  pool.on('connect', (client) => client.on('error', () => undefined));
  const db: Db = new Kysely({ dialect: new PostgresDialect({ pool }) });
  return { db, kind: 'postgres', close: () => db.destroy() };
}

export const openDatabase = (place: Place): Database =>
  'url' in place ? serverAt(place.url) : fileIn(place.folder);

/** Opens records to look into them; makes none where there are none in the folder, and is undefined. */
export function openExisting(place: Place): Database | undefined {
  if ('url' in place) return serverAt(place.url);
  const file = sqliteFile(place.folder);
  return existsSync(file) ? recordsIn(readSqlite(file)) : undefined;
}

/** Makes what tables are missing, and returns the names of the steps it took. Throws where one fails. */
export async function migrate({ db, kind }: Database): Promise<readonly string[]> {
  const migrator = new Migrator({ db, provider: migrationsFor(kind) });
  const { error, results = [] } = await migrator.migrateToLatest();
  if (error !== undefined) throw error as Error;
  return results.map(({ migrationName }) => migrationName);
}

/** The names of the steps that were not yet taken. */
export async function missingMigrations({ db, kind }: Database): Promise<readonly string[]> {
  const migrator = new Migrator({ db, provider: migrationsFor(kind) });
  const known = await migrator.getMigrations();
  return known.filter(({ executedAt }) => !executedAt).map(({ name }) => name);
}

/** The names of steps taken by a newer version of the app, which this one does not know. */
export async function unknownMigrations({ db, kind }: Database): Promise<readonly string[]> {
  const known = await migrationsFor(kind).getMigrations();
  const taken = await sql<{ name: string }>`select name from kysely_migration order by name`
    .execute(db)
    .then(({ rows }) => rows.map(({ name }) => name));
  return taken.filter((name) => !Object.hasOwn(known, name));
}
