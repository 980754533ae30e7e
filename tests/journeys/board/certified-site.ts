/** The invented company with certificates, served from records of its own. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base } from '@playwright/test';
import { openDatabase } from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';
import { serve } from '../../browser/site.ts';

type Demo = {
  readonly company: string;
  readonly password: string;
  readonly logins: readonly { readonly role: string; readonly username: string }[];
};

export type CertifiedSite = Demo & { readonly address: string };

const dayIn = (days: number): string =>
  new Date(Date.now() + days * 24 * 60 * 60 * 1000).toISOString().slice(0, 10);

/** In place of what was invented: six people certified for the base of a wall, one of them suspended, and two of the six to lead. */
async function certify(folder: string, company: string): Promise<void> {
  const { db, close } = openDatabase({ folder });
  const people = await db
    .selectFrom('person')
    .select('id')
    .where('company_id', '=', company)
    .where('left_at', 'is', null)
    .where('crew_id', 'is not', null)
    .orderBy('search')
    .limit(6)
    .execute();
  const row = (person: string, scheme: string, state: string) => ({
    id: freshId(),
    company_id: company,
    person_id: person,
    scheme,
    ruling_id: null,
    granted_on: dayIn(-30),
    valid_until: dayIn(700),
    state,
    replaced_by: null,
    made_at: new Date().toISOString(),
  });
  const base = people.map(({ id }, at) =>
    row(id, 'base-of-wall-installer', at === 0 ? 'suspended' : 'in-force'),
  );
  const lead = people.slice(1, 3).map(({ id }) => row(id, 'crew-lead', 'in-force'));
  const before = db.selectFrom('certificate').select('id').where('company_id', '=', company);
  await db.deleteFrom('certificate_issue').where('certificate_id', 'in', before).execute();
  await db.deleteFrom('certificate_event').where('company_id', '=', company).execute();
  await db.deleteFrom('certificate').where('company_id', '=', company).execute();
  await db
    .insertInto('certificate')
    .values([...base, ...lead])
    .execute();
  await close();
}

export const test = base.extend<{ readonly site: CertifiedSite }>({
  // To invent a company takes its time where there is other work.
  site: [
    async ({}, use) => {
      const data = mkdtempSync(join(tmpdir(), 'underlap-board-'));
      const made = JSON.parse(
        execFileSync(process.execPath, ['src/cli/underlap.ts', 'demo'], {
          env: { ...process.env, DATA_DIR: data },
          stdio: ['ignore', 'pipe', 'ignore'],
          encoding: 'utf8',
        }),
      ) as Demo;
      await certify(data, made.company);
      const site = await serve(undefined, 0, { DATA_DIR: data, LOG_LEVEL: 'off' });
      await use({ ...made, address: site.address });
      await site.stop();
      rmSync(data, { recursive: true, force: true });
    },
    { timeout: 240_000 },
  ],
});
