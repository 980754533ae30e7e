/** The invented company served with what the pictures and the measurements need of it. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions } from '@playwright/test';
import { openContent } from '#server/content.ts';
import { migrate, openDatabase } from '#server/database/open-database.ts';
import { makeDemo } from '#server/demo/make-demo.ts';
import { openAuth } from '#server/logins/auth.ts';
import { serve, type Site } from '../site.ts';
import { examsThere } from './exams-there.ts';
import { knownThere } from './known-there.ts';
import { logins, type There, type Who } from './people-there.ts';

export type SignedIn = Exclude<BrowserContextOptions['storageState'], string | undefined>;

export type PicturedSite = Site & {
  /** What stands in addresses, by the name under which a screen asks for it. */
  readonly known: Readonly<Record<string, string>>;
  /** The cookies of somebody who has signed in; each signs in once. */
  readonly signedIn: (browser: Browser, who: Who) => Promise<SignedIn>;
};

async function makeThere(folder: string) {
  const records = openDatabase({ folder });
  await migrate(records);
  const auth = await openAuth(records);
  const demo = await makeDemo(records, auth, openContent(), { now: new Date() });
  if (!demo.ok) throw new Error(demo.error);
  const { company, password } = demo.value;
  const there: There = { records, auth, company, password };
  const known = { ...(await knownThere(there)), ...(await examsThere(there)) };
  await records.close();
  return { known, password };
}

export async function picturedSite(): Promise<PicturedSite> {
  const folder = mkdtempSync(join(tmpdir(), 'underlap-pictures-'));
  const { known, password } = await makeThere(folder);
  const site = await serve(undefined, 0, { DATA_DIR: folder, LOG_LEVEL: 'error' });
  const states = new Map<Who, Promise<SignedIn>>();
  const signIn = async (browser: Browser, who: Who): Promise<SignedIn> => {
    const context = await browser.newContext({ serviceWorkers: 'block' });
    const page = await context.newPage();
    await page.goto(`${site.address}/sign-in`);
    await page.locator('input[name=name]').fill(logins[who]);
    await page.locator('input[name=password]').fill(password);
    await page.locator('main form button').first().click();
    await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
    // The cookies alone: what is kept in the page's own store is in the language of that visit.
    const { cookies } = await context.storageState();
    await context.close();
    return { cookies: cookies.filter(({ httpOnly }) => httpOnly), origins: [] };
  };
  return {
    ...site,
    known,
    signedIn: (browser, who) => {
      const state = states.get(who) ?? signIn(browser, who);
      states.set(who, state);
      return state;
    },
    stop: async () => {
      await site.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
