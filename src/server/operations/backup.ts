import { backup as copyPages, DatabaseSync } from 'node:sqlite';
import type { Kind } from '../database/kind.ts';
import { recordsIn, type Place, sqliteFile } from '../database/open-database.ts';
import { readSqlite } from '../database/sqlite-dialect.ts';
import { checkDump } from './dump-check.ts';
import { bytesOf, freshFile } from './fresh-file.ts';
import { connectionOf, runProgram } from './postgres-programs.ts';
import { checkRecords, type RecordsCheck } from './records-check.ts';
import { OperationTrouble } from './trouble.ts';

export type Backup = {
  readonly file: string;
  readonly kind: Kind;
  readonly bytes: number;
  /** Of the records themselves: such a backup is kept, and told. */
  readonly faults: readonly string[];
  /** Of every company: kept apart from the server, they convict a trail that was rewritten. */
  readonly trails: readonly {
    readonly company: string;
    readonly length: number;
    readonly hash: string;
  }[];
};

/** In one go, as a copy made in parts starts over whenever somebody writes. */
const allPages = 2 ** 31 - 1;

/** All pages at one moment of the records, while others write on; then one file by itself. */
async function copySqlite(from: string, to: string): Promise<void> {
  const source = readSqlite(from);
  try {
    await copyPages(source, to, { rate: allPages });
  } finally {
    source.close();
  }
  const copy = new DatabaseSync(to);
  copy.exec('pragma journal_mode = delete');
  copy.close();
}

/** Whether a backup in a file is whole. Throws an OperationTrouble where it is no backup at all. */
export async function checkBackup(file: string, kind: Kind): Promise<RecordsCheck> {
  if (kind === 'postgres') return checkDump(file);
  const records = recordsIn(readSqlite(file));
  try {
    return await checkRecords(records);
  } catch (error) {
    const why = error instanceof Error ? error.message : '';
    throw new OperationTrouble(`${file} cannot be read as records of this app (${why}).`);
  } finally {
    await records.close();
  }
}

export const kindOf = (place: Place): Kind => ('url' in place ? 'postgres' : 'sqlite');

/**
 * Writes everything that is kept at a place into a file, while the server goes on, and reads the file
 * through before it takes its name. A backup restores onto the kind of database it was made of.
 */
export function backup(place: Place, file: string): Promise<Backup> {
  return freshFile(file, async (temporary) => {
    if ('url' in place) {
      const { address, env } = connectionOf(place.url);
      const how = ['--format=custom', '--no-owner', '--no-privileges', `--file=${temporary}`];
      await runProgram('pg_dump', [...how, `--dbname=${address}`], { env });
    } else {
      await copySqlite(sqliteFile(place.folder), temporary);
    }
    const { trails, faults } = await checkBackup(temporary, kindOf(place));
    return {
      file,
      kind: kindOf(place),
      bytes: bytesOf(temporary),
      faults,
      trails: trails.map(({ company, length, hash }) => ({ company, length, hash })),
    };
  });
}
