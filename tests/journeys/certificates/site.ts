/** A server whose company has an office, a holder who can sign in, and a certificate that was granted. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type Page, test as base } from '@playwright/test';
import { addPeriod, type IsoDate } from '#engine/calendar.ts';
import type { SchemeId } from '#engine/exam/scheme.ts';
import { grantCertificate } from '#server/certificates/grant.ts';
import { found } from '#server/companies/companies.ts';
import { openContent } from '#server/content.ts';
import { type Database, migrate, openDatabase } from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';
import { type Auth, openAuth } from '#server/logins/auth.ts';
import { create } from '#server/logins/logins.ts';
import { searchText } from '#server/people/folded.ts';
import { serve } from '../../browser/site.ts';

const password = 'three plain words';

export type CertifiedSite = {
  readonly address: string;
  readonly company: string;
  readonly office: string;
  readonly holder: string;
};

async function loginFor(auth: Auth, name: string): Promise<{ login: string; username: string }> {
  const username = name.split(' ')[0]!.toLowerCase();
  const made = await create(auth, { name, username, password });
  if (!made.ok) throw new Error(made.error);
  return { login: made.value, username };
}

/** What there is when the journey begins: decided yesterday, by the real clock of the server. */
async function granted(records: Database) {
  const { db } = records;
  const auth = await openAuth(records);
  const at = new Date().toISOString();
  const [office, holder] = [
    await loginFor(auth, 'Olga Office'),
    await loginFor(auth, 'Ana María Ruiz'),
  ];
  const { company, person: by } = await found(db, {
    name: 'Test Walls',
    office: 'Olga Office',
    login: office.login,
    at,
  });
  const person = freshId();
  await db
    .insertInto('person')
    .values({
      id: person,
      company_id: company,
      login_id: holder.login,
      name: 'Ana María Ruiz',
      roles: 'apprentice',
      search: searchText('Ana María Ruiz', null),
      created_at: at,
    })
    .execute();
  const content = openContent();
  const scheme = content.schemes.get('base-of-wall-installer' as SchemeId)!;
  const member = { company, companyName: 'Test Walls', isDemo: false, person: by, name: 'Olga' };
  const act = { by: { ...member, roles: ['office' as const], crew: null }, at };
  const grantedOn = addPeriod(at.slice(0, 10) as IsoDate, { count: 1, unit: 'days' }, -1);
  const validUntil = addPeriod(grantedOn, scheme.validity);
  const grant = { person, scheme, ruling: null, grantedOn, validUntil, renews: null };
  await db.transaction().execute((trx) => grantCertificate(trx, act, content, grant));
  return { company, office: office.username, holder: holder.username };
}

export const test = base.extend<{ readonly site: CertifiedSite }>({
  // Nothing is needed for it, which is said by an empty pattern.

  site: async ({}, use) => {
    const data = mkdtempSync(join(tmpdir(), 'underlap-certificates-'));
    const records = openDatabase({ folder: data });
    await migrate(records);
    const known = await granted(records);
    await records.close();
    const { address, stop } = await serve(undefined, 0, { DATA_DIR: data, LOG_LEVEL: 'error' });
    await use({ address, ...known });
    await stop();
    rmSync(data, { recursive: true, force: true });
  },
});

/** How a browser of somebody's own is opened. */
export const options = (site: CertifiedSite) => ({
  baseURL: site.address,
  viewport: base.info().project.use.viewport ?? null,
  locale: 'en-US',
  serviceWorkers: 'block' as const,
});

export async function signedIn(browser: Browser, site: CertifiedSite, name: string): Promise<Page> {
  const context = await browser.newContext(options(site));
  const page = await context.newPage();
  await page.goto('/sign-in');
  await page.locator('input[name=name]').fill(name);
  await page.locator('input[name=password]').fill(password);
  await page.locator('main form button').first().click();
  await page.waitForURL(/\/company/);
  return page;
}
