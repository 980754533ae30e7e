/** Pictures of what each role of the invented company sees, signed in. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from '@playwright/test';
import { serve } from './site.ts';

type Made = {
  readonly company: string;
  readonly password: string;
  readonly logins: readonly { readonly role: string; readonly username: string }[];
};

const root = join(import.meta.dirname, '../..');

/** What each role opens: addresses below the company's, and words of a link to follow from there. */
const visits: Readonly<Record<string, readonly string[]>> = {
  office: [
    '',
    'board',
    'board/*',
    'board/coverage',
    'board/declared',
    'jobs',
    'jobs/new',
    'crews',
    'crews/*',
    'people',
    'people/*',
    'people/import',
    'cards',
    'applications',
    'tokens',
    'numbers',
  ],
  examiner: ['', 'checks', 'decisions', 'certificates', 'numbers'],
  trainer: [
    '',
    'crews/*',
    'people/*/points',
    'assignments',
    'assignments/*',
    'assignments/new',
    'numbers',
  ],
  apprentice: ['', 'points', '/due', '/account'],
};

/** The address of a visit; `*` is whatever the list before it links to first. */
async function go(page: Page, site: string, company: string, visit: string): Promise<void> {
  const home = `/company/${company}`;
  if (visit.startsWith('/')) return void (await page.goto(site + visit, quiet));
  const [list, rest] = visit.split('/*');
  await page.goto(`${site}${home}${list ? `/${list}` : ''}`, quiet);
  if (rest === undefined) return;
  const link = page.locator(`main a[href*="${home}/${list}/"]:not([href$="/new"],[href$=".csv"])`);
  const [first] = await link.evaluateAll((links) =>
    links
      .map((each) => each.getAttribute('href') ?? '')
      .filter((href) => /[0-9a-f]{8}-[0-9a-f-]+$/.test(href)),
  );
  if (!first) throw new Error(`${visit}: the list links to nothing`);
  await page.goto(site + first + rest, quiet);
}

const quiet = { waitUntil: 'networkidle' } as const;

/** Makes the company, serves it, and hands each screen to `shot` under its name. */
export async function shootCompany(
  browser: Browser,
  kinds: readonly { readonly kind: string; readonly context: BrowserContextOptions }[],
  shot: (page: Page, name: string) => Promise<void>,
): Promise<void> {
  const data = mkdtempSync(join(tmpdir(), 'underlap-demo-'));
  const made = JSON.parse(
    execFileSync(process.execPath, [join(root, 'src/cli/underlap.ts'), 'demo'], {
      cwd: root,
      env: { ...process.env, DATA_DIR: data },
      stdio: ['ignore', 'pipe', 'ignore'],
      encoding: 'utf8',
    }),
  ) as Made;
  const site = await serve(root, 0, { DATA_DIR: data });
  try {
    for (const { role, username } of made.logins) {
      for (const { kind, context: options } of kinds) {
        const context = await browser.newContext(options);
        const page = await context.newPage();
        await page.goto(`${site.address}/sign-in`, quiet);
        await page.locator('input[name=name]').fill(username);
        await page.locator('input[name=password]').fill(made.password);
        await page.locator('main form button[type=submit], main form button').first().click();
        await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
        for (const visit of visits[role] ?? []) {
          await go(page, site.address, made.company, visit);
          const name = visit.replaceAll('*', 'one').replaceAll(/[^a-z]+/g, '-');
          await shot(page, `${role}-${name.replaceAll(/^-|-$/g, '') || 'home'}-${kind}`);
        }
        await context.close();
      }
    }
  } finally {
    await site.stop();
    rmSync(data, { recursive: true, force: true });
  }
}
