import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Place } from '#server/database/open-database.ts';
import type { Verification } from '#server/audit/audit-trail.ts';
import { addAttempt, staff } from '../server/people/staff.ts';
import { freshRecords, kinds } from '../server/records.ts';

const program = join(import.meta.dirname, '../../src/cli/underlap.ts');
const freshFolder = () => mkdtempSync(join(tmpdir(), 'underlap-cli-'));

const underlap = (place: Place & { readonly keys?: string }, ...args: readonly string[]) =>
  new Promise<{ code: number | null; result: unknown; beside: string }>((resolve) => {
    const { DATABASE_URL: _, ...env } = process.env;
    const records = 'url' in place ? { DATABASE_URL: place.url } : {};
    const folder = 'folder' in place ? place.folder : (place.keys ?? freshFolder());
    const child = spawn(process.execPath, [program, ...args], {
      env: { ...env, ...records, DATA_DIR: folder },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let [out, beside] = ['', ''];
    child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString()));
    child.stderr.on('data', (chunk: Buffer) => (beside += chunk.toString()));
    child.on('close', (code) =>
      resolve({ code, result: out === '' ? undefined : (JSON.parse(out) as unknown), beside }),
    );
  });

// Each command is a process of its own, and a test runs up to ten.
describe.each(kinds)('%s', { timeout: 180_000 }, (kind) => {
  test('records are backed up, lost, restored and verified by command alone', async () => {
    const records = await freshRecords(kind);
    const { company } = await staff(records);
    const file = join(freshFolder(), 'kept');
    const made = await underlap(records.place, 'backup', file);
    expect(made).toMatchObject({ code: 0, result: { kind, trails: [{ company, length: 1 }] } });
    expect((await underlap(records.place, 'backup', file)).code).toBe(1);

    const empty = await freshRecords(kind);
    await empty.close();
    const asked = await underlap(empty.place, 'restore', file);
    expect(asked).toMatchObject({ code: 0, result: { restored: false } });
    expect((await underlap(empty.place, 'verify')).result).toEqual([]);
    expect(await underlap(empty.place, 'restore', file, '--yes')).toMatchObject({
      code: 0,
      result: { restored: true },
    });
    const verified = await underlap(empty.place, 'verify');
    const [trail] = verified.result as readonly Verification[];
    expect(trail).toMatchObject({ company, length: 1, faults: [] });
    expect(await underlap(empty.place, 'migrate')).toMatchObject({ result: { taken: [] } });
    const again = await underlap(empty.place, 'restore', file, '--yes');
    expect([again.code, again.beside]).toEqual([1, expect.stringContaining('--replace')]);
    await records.drop();
  });

  test('a person is exported and erased by command alone', async () => {
    const records = await freshRecords(kind);
    const known = await staff(records);
    await addAttempt(records, known);
    const { place } = records;
    const file = join(freshFolder(), 'person.json');
    expect(await underlap(place, 'export-person', known.apprentice, file)).toMatchObject({
      code: 0,
      result: { person: known.apprentice, attempts: 1 },
    });
    expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({
      person: { name: 'Ana Apprentice' },
    });
    expect((await underlap(place, 'erase-person', known.apprentice)).code).toBe(2);
    expect(await underlap(place, 'erase-person', known.apprentice, '--yes')).toMatchObject({
      code: 0,
      result: { erased: true, before: false },
    });
    const last = await underlap(place, 'erase-person', known.office, '--yes');
    expect([last.code, last.beside]).toEqual([1, expect.stringContaining('last person')]);
    expect((await underlap(place, 'erase-person', 'nobody', '--yes')).code).toBe(1);
    expect((await underlap(place, 'verify')).code).toBe(0);
    await records.drop();
  });

  test('the key that certificates are signed with is listed and rotated by command alone', async () => {
    const records = await freshRecords(kind);
    const place =
      'folder' in records.place ? records.place : { ...records.place, keys: freshFolder() };
    expect(await underlap(place, 'keys', 'list')).toMatchObject({ code: 0, result: [] });
    const first = await underlap(place, 'keys', 'rotate');
    const second = await underlap(place, 'keys', 'rotate');
    const [one, two] = [first, second].map(({ result }) => result as Record<'from' | 'to', string>);
    expect(two).toMatchObject({ from: one!.to });
    const listed = await underlap(place, 'keys', 'list');
    const keys = listed.result as readonly { readonly id: string; readonly retiredAt: unknown }[];
    expect(keys.filter(({ retiredAt }) => retiredAt === null).map(({ id }) => id)).toEqual([
      two!.to,
    ]);
    expect(keys.map(({ id }) => id).toSorted()).toEqual([one!.from, one!.to, two!.to].toSorted());
    expect((await underlap(place, 'keys', 'lose')).code).toBe(2);
    await records.drop();
  });
});

test('where there are no records a command says so and makes none', async () => {
  const place = { folder: join(freshFolder(), 'none') };
  for (const args of [['verify'], ['backup', 'x'], ['erase-person', 'x', '--yes']]) {
    const { code, beside } = await underlap(place, ...args);
    expect([code, beside]).toEqual([2, expect.stringContaining('There are no records')]);
  }
});
