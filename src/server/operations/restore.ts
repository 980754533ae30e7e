import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { sql } from 'kysely';
import { isAny } from '../companies/companies.ts';
import { openDatabase, openExisting, type Place, sqliteFile } from '../database/open-database.ts';
import { backup, checkBackup, kindOf } from './backup.ts';
import { freshFile } from './fresh-file.ts';
import { connectionOf, runProgram } from './postgres-programs.ts';
import { OperationTrouble } from './trouble.ts';

const inUse = 'The records are in use. Stop the server (and whatever else has them open) first.';

/** Whether there is anything at a place that a restore would take away. */
export async function holdsCompanies(place: Place): Promise<boolean> {
  const records = openExisting(place);
  if (!records) return false;
  try {
    const tables = await records.db.introspection.getTables();
    return tables.some(({ name }) => name === 'company') && (await isAny(records.db));
  } finally {
    await records.close();
  }
}

/** Makes the records one file that nobody has open, so that it can be put aside whole. */
function settle(file: string): void {
  const records = new DatabaseSync(file, { timeout: 200 });
  try {
    records.exec('pragma journal_mode = delete');
  } catch {
    throw new OperationTrouble(inUse);
  } finally {
    records.close();
  }
}

async function restoreSqlite(folder: string, file: string, stamp: string) {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const kept = sqliteFile(folder);
  const aside = existsSync(kept) ? `${kept}.before-${stamp}` : undefined;
  if (aside) settle(kept);
  // A log that was left behind would be taken for that of the restored file.
  for (const left of ['-wal', '-shm', '.restored']) rmSync(kept + left, { force: true });
  await freshFile(`${kept}.restored`, (temporary) => {
    copyFileSync(file, temporary);
    chmodSync(temporary, 0o600);
    return Promise.resolve();
  });
  if (aside) renameSync(kept, aside);
  renameSync(`${kept}.restored`, kept);
  return aside;
}

/** What takes away all that the records hold, as SQL; empty where they hold nothing. */
async function clearing(place: Place): Promise<string> {
  const { db, close } = openDatabase(place);
  try {
    const { rows } = await sql<{ users: string }>`select count(*) as users from pg_stat_activity
      where datname = current_database() and pid <> pg_backend_pid()
      and backend_type = 'client backend'`.execute(db);
    if (Number(rows[0]?.users) > 0) throw new OperationTrouble(inUse);
    const tables = await db.introspection.getTables({ withInternalKyselyTables: true });
    const names = tables.map(({ name }) => `"${name}"`).join(', ');
    const { rows: functions } = await sql<{ name: string }>`
      select oid::regprocedure::text as name from pg_proc
      where pronamespace = current_schema()::regnamespace`.execute(db);
    const guards = functions.map(({ name }) => `drop function ${name} cascade;`).join(' ');
    return names && `drop table ${names} cascade; ${guards}`;
  } finally {
    await close();
  }
}

/** All of it in one transaction: where the backup cannot be read, what was there stays. */
async function restorePostgres(url: string, file: string, folder: string, stamp: string) {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const clear = await clearing({ url });
  const aside = clear === '' ? undefined : join(folder, `before-${stamp}.dump`);
  if (aside) await backup({ url }, aside);
  const script = join(folder, `restore-${stamp}.sql`);
  const { address, env } = connectionOf(url);
  try {
    writeFileSync(script, '', { flag: 'wx', mode: 0o600 });
    await runProgram('pg_restore', ['--no-owner', '--no-privileges', `--file=${script}`, file], {});
    const how = ['--quiet', '--no-psqlrc', '--single-transaction', '--set=ON_ERROR_STOP=1'];
    const steps = [...(aside ? [`--command=${clear}`] : []), `--file=${script}`];
    await runProgram('psql', [...how, ...steps, `--dbname=${address}`], { env });
  } finally {
    rmSync(script, { force: true });
  }
  return aside;
}

export type Restore = {
  /** Goes on where there are companies. */
  readonly replace: boolean;
  /** Goes on where the backup says of itself that something in it is not whole. */
  readonly despiteFaults: boolean;
};

export type Restored = {
  readonly faults: readonly string[];
  /** Where what was there before now is; undefined where nothing was. */
  readonly aside: string | undefined;
};

/**
 * Whether a backup may be put in the place of the records: reads both and changes neither. Returns what
 * is wrong with the backup, and throws an OperationTrouble where it may not.
 */
export async function checkRestore(
  place: Place,
  file: string,
  { replace, despiteFaults }: Restore,
): Promise<readonly string[]> {
  if (!existsSync(file)) throw new OperationTrouble(`There is no file ${file}.`);
  const { faults } = await checkBackup(file, kindOf(place));
  if (faults.length > 0 && !despiteFaults) {
    const told = `${file} is not whole:\n  ${faults.join('\n  ')}`;
    throw new OperationTrouble(`${told}\nTake another, or add --despite-faults.`);
  }
  if (!replace && (await holdsCompanies(place))) {
    throw new OperationTrouble(
      'There are companies in the records already. Add --replace to put these aside.',
    );
  }
  return faults;
}

/** Puts a backup in the place of the records; `folder` is where those of PostgreSQL are put aside. */
export async function restore(
  { place, folder }: { readonly place: Place; readonly folder: string },
  file: string,
  how: Restore & { readonly at: Date },
): Promise<Restored> {
  const faults = await checkRestore(place, file, how);
  const stamp = how.at.toISOString().replaceAll(/[:.]/g, '-');
  const aside =
    'url' in place
      ? await restorePostgres(place.url, file, folder, stamp)
      : await restoreSqlite(place.folder, file, stamp);
  return { faults, aside };
}
