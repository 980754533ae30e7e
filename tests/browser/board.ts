/**
 * How long the office waits for the competence board, and for it to be narrowed, with few people and with
 * very many: from asking for the page to its first paint, and from pressing to the rows being painted.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from '@playwright/test';
import { openContent } from '#server/content.ts';
import { openDatabase } from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';
import { certify } from '../bench/load/certify.ts';
import { company, fill } from '../bench/load/fill.ts';
import { signingIn } from '../faults/signed-in.ts';
import { awake } from '../journeys/building.ts';
import { addPerson } from '../server/people/staff.ts';
import { median, tableOf } from './figures.ts';
import { serve } from './site.ts';

const sizes = [100, 5_000, 50_000];
const runs = 7;

/** The office of a company of so many people, as a cookie. */
async function officeOf(folder: string, people: number): Promise<string> {
  await fill({ folder }, { people, perPerson: 1 });
  certify(folder, people, [...openContent().schemes.values()]);
  const records = openDatabase({ folder });
  const { login, cookie } = await (await signingIn(records))('Olga Office');
  await addPerson(records, company, { id: freshId(), name: 'Olga Office', login, roles: 'office' });
  await records.close();
  return cookie;
}

async function firstPaint(page: Page, address: string): Promise<number> {
  await page.goto(address, { waitUntil: 'networkidle' });
  await awake(page);
  return page.evaluate(
    () => performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? NaN,
  );
}

/** From pressing until what was asked for is painted. */
const narrowed = (page: Page, state: string): Promise<number> =>
  page.evaluate(async (wanted) => {
    const form = document.querySelector<HTMLFormElement>('form[role=search]')!;
    const choose = (name: string, value: string) => {
      form.querySelector<HTMLSelectElement>(`select[name=${name}]`)!.value = value;
    };
    choose('qualification', 'base-of-wall-installer');
    choose('state', wanted);
    const start = performance.now();
    form.requestSubmit();
    const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
    while (!location.search.includes(`state=${wanted}`)) await frame();
    await frame();
    await new Promise((resolve) => setTimeout(resolve));
    return performance.now() - start;
  }, state);

/**
 * How many times longer the office may wait with 50,000 people than with 100. Without a page of bounded
 * length it would be hundreds.
 */
const bound = 3;

/** Prints the figures with their growth; false where it passes the bound. */
export async function measureBoard(browser: Browser): Promise<boolean> {
  console.log('The competence board of the office. Milliseconds.');
  const rows: (readonly string[])[] = [['people', 'first paint', 'current', 'suspended']];
  const above = mkdtempSync(join(tmpdir(), 'underlap-board-'));
  for (const people of sizes) {
    const folder = join(above, String(people));
    const cookie = await officeOf(folder, people);
    const site = await serve(undefined, 0, { DATA_DIR: folder, LOG_LEVEL: 'off' });
    const context = await browser.newContext({
      viewport: { width: 1280, height: 800 },
      serviceWorkers: 'block',
    });
    const [name = '', value = ''] = cookie.split('=');
    await context.addCookies([{ name, value, url: site.address }]);
    const page = await context.newPage();
    const address = `${site.address}/company/${company}/board`;
    const times: Record<'paint' | 'current' | 'suspended', number[]> = {
      paint: [],
      current: [],
      suspended: [],
    };
    for (let run = 0; run < runs; run += 1) {
      times.paint.push(await firstPaint(page, address));
      times.current.push(await narrowed(page, 'current'));
      times.suspended.push(await narrowed(page, 'suspended'));
    }
    rows.push([String(people), ...Object.values(times).map((each) => median(each).toFixed(0))]);
    await context.close();
    await site.stop();
  }
  const [fewest = [], ...others] = rows.slice(1).map((row) => row.map(Number));
  const growth = others.map(([people, ...times]) => ({
    people,
    times: times.map((time, place) => time / fewest[place + 1]!),
  }));
  rmSync(above, { recursive: true, force: true });
  console.log(tableOf(rows));
  for (const { people, times } of growth) {
    const ratios = times.map((ratio) => ratio.toFixed(2)).join(', ');
    console.log(`${people} people: times ${ratios} those of ${fewest[0]}`);
  }
  const holds = growth.every(({ times }) => times.every((ratio) => ratio < bound));
  console.log(`${holds ? 'holds' : 'FAILS'}: less than ${bound} times`);
  return holds;
}
