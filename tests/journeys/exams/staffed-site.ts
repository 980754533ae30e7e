/** A server of its own with a company that has an office, an examiner and a candidate, who can sign in. */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Page, test as base } from '@playwright/test';
import type { Role } from '#server/access/roles.ts';
import { found } from '#server/companies/companies.ts';
import { migrate, openDatabase } from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';
import { openAuth } from '#server/logins/auth.ts';
import { create } from '#server/logins/logins.ts';
import { searchText } from '#server/people/folded.ts';

const password = 'three plain words';

export type StaffedSite = { readonly address: string; readonly company: string };

async function staff(folder: string): Promise<string> {
  const records = openDatabase({ folder });
  await migrate(records);
  const auth = await openAuth(records);
  const at = new Date().toISOString();
  const login = async (username: string): Promise<string> => {
    const made = await create(auth, { name: username, username, password });
    if (!made.ok) throw new Error('no login');
    return made.value;
  };
  const office = { office: 'Olga Office', login: await login('olga.office'), at };
  const { company } = await found(records.db, { ...office, name: 'Test Walls' });
  const add = async (name: string, username: string, role: Role) =>
    records.db
      .insertInto('person')
      .values({
        id: freshId(),
        company_id: company,
        login_id: await login(username),
        name,
        roles: role,
        search: searchText(name, null),
        created_at: at,
      })
      .execute();
  await add('Ed Examiner', 'ed.examiner', 'examiner');
  await add('Ana López', 'ana.lopez', 'apprentice');
  await records.close();
  return company;
}

export const test = base.extend<{ readonly site: StaffedSite }>({
  // Nothing is needed for it, which is said by an empty pattern.

  site: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'underlap-exams-'));
    const company = await staff(folder);
    const server = spawn(process.execPath, ['src/server/serve.ts'], {
      env: { ...process.env, PORT: '0', HOST: '127.0.0.1', DATA_DIR: folder, LOG_LEVEL: 'error' },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const address = await new Promise<string>((resolve, reject) => {
      server.stdout.on('data', (chunk: Buffer) => {
        const said = /(http:\S+)/.exec(chunk.toString())?.[1];
        if (said) resolve(said);
      });
      server.on('close', () => reject(new Error('The server has ended.')));
    });
    await use({ address, company });
    const ended = new Promise((resolve) => server.on('close', resolve));
    server.kill('SIGTERM');
    await ended;
    rmSync(folder, { recursive: true, force: true });
  },
});

export async function signIn(page: Page, username: string): Promise<void> {
  await page.goto('/sign-in');
  await page.locator('input[name=name]').fill(username);
  await page.locator('input[name=password]').fill(password);
  await page.locator('main form button').first().click();
  await page.waitForURL(/\/company\/[0-9a-f-]+$/);
}
