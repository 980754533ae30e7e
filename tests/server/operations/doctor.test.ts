import { chmodSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { describe, expect, test } from 'vitest';
import { examine } from '#server/operations/doctor.ts';
import { contentCheck, folderCheck, nodeCheck } from '#server/operations/machine-checks.ts';
import { at, staff } from '../people/staff.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const later = new Date('2030-06-01T00:00:00.000Z');
const freshFolder = () => mkdtempSync(join(tmpdir(), 'underlap-doctor-'));

const environmentOf = ({ place }: Records) =>
  'url' in place
    ? { DATABASE_URL: place.url, DATA_DIR: freshFolder() }
    : { DATA_DIR: place.folder };

describe.each(kinds)('%s', (kind) => {
  const recordsCheck = async (records: Records, now = later) => {
    const found = await examine(environmentOf(records), now);
    return Object.fromEntries(found.map((each) => [each.check, each]));
  };

  test('records that are whole pass every check', async () => {
    const records = await freshRecords(kind);
    await staff(records);
    const found = await recordsCheck(records);
    for (const check of ['settings', 'database', 'migrations', 'pages', 'references', 'clock']) {
      expect(found[check]?.state, check).toBe('ok');
    }
    expect(found['audit trails']).toMatchObject({ state: 'ok', found: '1 whole, 1 entries' });
    await records.drop();
  });

  test('what is wrong is told by its check, each with a cure', async () => {
    const records = await freshRecords(kind);
    const { company } = await staff(records);
    await sql`update company set audit_hash = 'x' where id = ${company}`.execute(records.db);
    await sql`delete from kysely_migration where name = '0002-logins'`.execute(records.db);
    const found = await recordsCheck(records, new Date(Date.parse(at) - 3_600_000));
    const ill = Object.values(found).filter(({ state }) => state === 'fault');
    const checks = ill.map(({ check }) => check);
    expect(checks).toEqual(expect.arrayContaining(['migrations', 'audit trails', 'clock']));
    for (const { cure } of ill) expect(cure).toBeTruthy();
    await records.drop();
  });
});

test('a row without the row it points at is told by its table', async () => {
  const records = await freshRecords('sqlite');
  await sql`pragma foreign_keys = off`.execute(records.db);
  await sql`insert into crew (id, company_id, name, created_at)
    values ('c', 'nowhere', 'Crew', ${at})`.execute(records.db);
  const found = await examine(environmentOf(records), later);
  expect(found.find(({ check }) => check === 'references')?.found).toBe(
    'crew: 1 without their company',
  );
  await records.drop();
});

test('faulty settings and a database that is not there are told, and nothing is made', async () => {
  const faulty = await examine({ PORT: 'x' }, later);
  expect(faulty.find(({ check }) => check === 'settings')).toMatchObject({ state: 'fault' });
  const url = 'postgres://nobody@127.0.0.1:1/none';
  const absent = await examine({ DATABASE_URL: url, DATA_DIR: freshFolder() }, later);
  expect(absent.find(({ check }) => check === 'database')).toMatchObject({ state: 'fault' });
  expect(JSON.stringify(absent)).not.toContain(url);
});

test('a folder that others may look into, or that is none, is told', () => {
  const folder = freshFolder();
  expect(folderCheck({ folder }).state).toBe('ok');
  chmodSync(folder, 0o755);
  expect(folderCheck({ folder }).cure).toBe(`chmod 700 ${folder}`);
  writeFileSync(join(folder, 'file'), '');
  expect(folderCheck({ folder: join(folder, 'file', 'data') }).state).toBe('fault');
  expect(folderCheck({ folder: join(folder, 'not', 'yet') }).found).toMatch(/first start/);
});

test('an old Node and faulty content are told', () => {
  expect(nodeCheck('20.1.0').state).toBe('fault');
  expect(nodeCheck('24.0.0').state).toBe('ok');
  const folder = freshFolder();
  writeFileSync(join(folder, 'sources.yaml'), '- nonsense: [');
  expect(contentCheck(folder).state).toBe('fault');
});
