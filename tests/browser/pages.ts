/**
 * How each kind of page fares on a slow phone: how it loads with nothing kept, what axe finds, and what
 * is wrong with how it is made.
 */
import { type Browser, devices } from '@playwright/test';
import { breaches, overhang, tooSmall } from '../journeys/fitness.ts';
import { tableOf } from './figures.ts';
import { good, loadSlowly } from './loading.ts';
import { watchPractices } from './practices.ts';
import type { Site } from './site.ts';

export const pages: readonly string[] = [
  '/',
  '/practise',
  '/practise/base-of-wall?mode=own&seed=4',
  '/find/base-of-wall?seed=3',
  '/takeoff',
  '/takeoff/fasteners-one-bar?seed=7',
  '/written',
  '/written/materials-and-tools',
  '/methods/base-of-wall',
  '/glossary',
  '/search',
  '/attempts',
];

// Said by the browser of the tests, which is told to have no worker.
const ofTheTest = /Service Worker registration blocked/;

async function examine(browser: Browser, site: Site, address: string) {
  const context = await browser.newContext({
    ...devices['Pixel 5'],
    viewport: { width: 360, height: 740 },
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  const practicesOf = await watchPractices(page);
  const answering = page.waitForResponse((answer) => answer.url().startsWith(site.address));
  const loading = await loadSlowly(page, site.address + address);
  const practices = (await practicesOf(await answering)).filter((fault) => !ofTheTest.test(fault));
  const axe = await breaches(page);
  const sideways = await overhang(page);
  const fit = [
    ...(sideways > 0 ? [`pushed sideways by ${sideways} px`] : []),
    ...(await tooSmall(page)).map((control) => `too small for a glove: ${control}`),
  ];
  await context.close();
  return { loading, practices, axe, fit };
}

/** Prints the figures; true when nothing is wrong and the pages load as well as is called good. */
export async function measurePages(browser: Browser, site: Site): Promise<boolean> {
  const rows: (readonly string[])[] = [
    [
      '360 px, slow 4G, 4 times slower',
      'first',
      'largest',
      'blocked',
      'shift',
      'axe',
      'made',
      'fit',
    ],
  ];
  const faults: string[] = [];
  const slow: string[] = [];
  // A server that has just started reads its content at the first request; nobody else waits for that.
  for (const address of pages) await fetch(site.address + address);
  for (const address of pages) {
    const { loading, practices, axe, fit } = await examine(browser, site, address);
    const times = [loading.firstPaint, loading.largestPaint, loading.blocked];
    rows.push([
      address,
      ...times.map((time) => `${time.toFixed(0)} ms`),
      loading.shift.toFixed(3),
      ...[axe, practices, fit].map(({ length }) => String(length)),
    ]);
    faults.push(...[...axe, ...practices, ...fit].map((fault) => `  ${address}  ${fault}`));
    const isGood = (Object.keys(good) as (keyof typeof good)[]).every(
      (figure) => loading[figure] <= good[figure],
    );
    if (!isGood) slow.push(address);
  }
  console.log(tableOf(rows));
  faults.forEach((fault) => console.log(fault));
  const isSound = faults.length === 0;
  console.log(
    `${isSound ? 'holds' : 'FAILS'}  nothing found by axe, in how pages are made, or in fit`,
  );
  console.log(
    slow.length === 0
      ? 'all load as well as is called good'
      : `not as well as is called good: ${slow.join('  ')}`,
  );
  return isSound;
}
