/**
 * Looks into a backup of PostgreSQL without a server: `pg_restore` writes it out as text, and the tables
 * that tell whether it is whole are read from that (PostgreSQL 15 documentation, COPY, "Text Format").
 */
import { DatabaseSync } from 'node:sqlite';
import { recordsIn, unknownMigrations } from '../database/open-database.ts';
import { runProgram } from './postgres-programs.ts';
import { type RecordsCheck, trailFaults, trails } from './records-check.ts';
import { OperationTrouble } from './trouble.ts';

const read = ['company', 'audit_entry', 'kysely_migration'] as const;
const numbers = ['place', 'audit_length'];

const escapes: Readonly<Record<string, string>> = {
  b: '\b',
  f: '\f',
  n: '\n',
  r: '\r',
  t: '\t',
  v: '\v',
};

/** A field of a line as the server wrote it; null where it stands for nothing. */
export const copied = (text: string): string | null =>
  text === '\\N' ? null : text.replace(/\\(.)/gs, (_, letter: string) => escapes[letter] ?? letter);

/** Reads the whole archive, and so finds one that is cut short; keeps three tables of it in memory. */
export async function checkDump(file: string): Promise<RecordsCheck> {
  const memory = new DatabaseSync(':memory:');
  const records = recordsIn(memory);
  let insert: ((fields: readonly (string | null)[]) => void) | undefined;
  const line = (text: string): void => {
    if (text === '\\.') insert = undefined;
    if (insert) return insert(text.split('\t').map(copied));
    const [, table, list] = /^COPY public\.(\w+) \((.+)\) FROM stdin;$/.exec(text) ?? [];
    if (!table || !list || !read.some((name) => name === table)) return;
    const columns = list.split(', ');
    const typed = columns.map((name) => `${name} ${numbers.includes(name) ? 'integer' : 'text'}`);
    memory.exec(`create table ${table} (${typed.join(', ')})`);
    const statement = memory.prepare(
      `insert into ${table} values (${columns.map(() => '?').join(', ')})`,
    );
    insert = (fields) => void statement.run(...fields);
  };
  try {
    await runProgram('pg_restore', ['--file=-', file], { line });
    const tables = memory.prepare('select count(*) as count from sqlite_schema').get();
    if (tables?.['count'] !== read.length) {
      throw new OperationTrouble(`${file} cannot be read as records of this app.`);
    }
    const newer = await unknownMigrations(records);
    const found = await trails(records.db);
    return {
      trails: found,
      faults: [
        ...newer.map((name) => `It was made by a newer version of the app (${name}).`),
        ...trailFaults(found),
      ],
    };
  } finally {
    await records.close();
  }
}
