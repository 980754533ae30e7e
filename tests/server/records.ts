import { mkdtempSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { inject } from 'vitest';
import { type Kind, kinds } from '#server/database/kind.ts';
import {
  type Database,
  migrate,
  openDatabase,
  type Place,
} from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';

export { kinds };

/** Records that a test has for itself. */
export type Records = Database & {
  readonly place: Place;
  /** Closes them and takes them away. */
  readonly drop: () => Promise<void>;
};

async function freshServerDatabase(): Promise<{ place: Place; drop: () => Promise<void> }> {
  const address = inject('postgres');
  const name = `test_${freshId().replaceAll('-', '')}`;
  const on = async (statement: string) => {
    const { db, close } = openDatabase({ url: address });
    await sql.raw(statement).execute(db);
    await close();
  };
  await on(`create database ${name}`);
  const url = address.replace('/postgres?', `/${name}?`);
  return { place: { url }, drop: () => on(`drop database ${name} with (force)`) };
}

async function freshPlace(kind: Kind): Promise<{ place: Place; drop: () => Promise<void> }> {
  if (kind === 'postgres') return freshServerDatabase();
  const folder = mkdtempSync(join(tmpdir(), 'underlap-records-'));
  return {
    place: { folder },
    drop: () => rm(folder, { recursive: true, force: true }),
  };
}

/** Empty records of either kind, with their tables. */
export async function freshRecords(kind: Kind): Promise<Records> {
  const { place, drop } = await freshPlace(kind);
  const database = openDatabase(place);
  await migrate(database);
  return {
    ...database,
    place,
    drop: async () => {
      await database.close();
      await drop();
    },
  };
}
