/**
 * Pictures of every screen and every paper, by size, language and paper light or dark, with a sheet to
 * look over them:
 *
 *   npm run screenshots               then open test-results/screenshots/index.html
 *   npm run screenshots -- exam es    those whose name or kind holds each of the words
 */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium } from '@playwright/test';
import { awake } from '../journeys/building.ts';
import { launch } from './launch.ts';
import { canPrint, papers, print } from './pictures/papers.ts';
import { type PicturedSite, picturedSite } from './pictures/pictured-site.ts';
import type { Who } from './pictures/people-there.ts';
import { addressOf, isAt, type Screen } from './pictures/screen.ts';
import { screens } from './pictures/screens.ts';
import { serve } from './site.ts';

const folder = join(import.meta.dirname, '../../test-results/screenshots');
const asked = process.argv.slice(2);
const isAsked = (name: string): boolean => asked.every((word) => name.includes(word));

const phone = { viewport: { width: 360, height: 740 }, isMobile: true, hasTouch: true };
const sizes = { phone, desktop: { viewport: { width: 1280, height: 900 } } };
const languages = { en: 'en-US', es: 'es-MX' } as const;
const lights = ['light', 'dark'] as const;

/** Every size and language, with what a browser is opened with for it. */
const kinds = Object.entries(sizes).flatMap(([size, screen]) =>
  Object.entries(languages).map(([language, locale]) => ({
    kind: `${size}-${language}`,
    language: language as keyof typeof languages,
    context: { ...screen, locale, reducedMotion: 'reduce', serviceWorkers: 'block' } as const,
  })),
);
type Kind = (typeof kinds)[number];

const namesOf = (name: string, kind: string): readonly string[] =>
  lights.map((light) => `${name}-${kind}-${light}`).filter(isAsked);

/** Runs in the page: what sticks to the screen would else stand halfway down the picture, over the rest. */
function laidFlat(): void {
  scrollTo({ top: 0, behavior: 'instant' });
  for (const part of document.querySelectorAll<HTMLElement>('body *')) {
    if (getComputedStyle(part).position !== 'sticky') continue;
    part.style.position = 'relative';
    part.style.inset = 'auto';
  }
}

/** One screen in the light, and the same as it stands in the dark. */
async function shoot(
  context: BrowserContext,
  { address, known }: Pick<PicturedSite, 'address' | 'known'>,
  { kind, language }: Kind,
  screen: Screen,
): Promise<void> {
  const page = await context.newPage();
  await page.emulateMedia({ colorScheme: 'light' });
  await page.goto(address + addressOf(screen, known), { waitUntil: 'networkidle' });
  await awake(page);
  await screen.then?.(page, language, known);
  const { pathname } = new URL(page.url());
  if (!isAt(screen.leadsTo ?? screen.route, pathname)) {
    throw new Error(`${screen.name} leads to ${pathname}`);
  }
  await page.evaluate(laidFlat);
  for (const light of lights) {
    const name = `${screen.name}-${kind}-${light}`;
    if (!isAsked(name)) continue;
    await page.emulateMedia({ colorScheme: light });
    await page.screenshot({ path: join(folder, `${name}.png`), fullPage: true });
  }
  await page.close();
}

/** Each person has a browser of their own, kept from screen to screen: lists show what was done before. */
async function shootAs(
  browser: Browser,
  site: PicturedSite,
  kind: Kind,
  who: Who | undefined,
  wanted: readonly Screen[],
): Promise<number> {
  const storageState = who && (await site.signedIn(browser, who));
  const context = await browser.newContext({
    ...kind.context,
    ...(storageState === undefined ? {} : { storageState }),
  });
  context.setDefaultTimeout(30_000);
  let failed = 0;
  for (const screen of wanted) {
    const empty = screen.isFirstRun ? await serve(undefined, 0, { LOG_LEVEL: 'error' }) : undefined;
    try {
      await shoot(context, empty ? { ...site, address: empty.address } : site, kind, screen);
    } catch (fault) {
      failed += 1;
      console.error(`${screen.name} ${kind.kind}: ${String(fault)}`);
    }
    await empty?.stop();
  }
  if (kind.kind.startsWith('desktop')) {
    for (const paper of papers.filter((one) => one.as === who)) {
      const name = `${paper.name}-${kind.language}`;
      const file = { folder, name, locale: kind.context.locale };
      if (canPrint && isAsked(name)) await print(context.request, site, paper, file);
    }
  }
  await context.close();
  return failed;
}

async function shootAll(browser: Browser, site: PicturedSite): Promise<number> {
  let failed = 0;
  const people = [...new Set([...screens, ...papers].map((one) => one.as))];
  for (const kind of kinds) {
    for (const who of people) {
      const own = screens.filter((screen) => screen.as === who);
      const wanted = own.filter(({ name }) => namesOf(name, kind.kind).length > 0);
      const isPaperWanted = papers.some(
        (paper) => paper.as === who && isAsked(`${paper.name}-${kind.language}`),
      );
      if (wanted.length > 0 || isPaperWanted) {
        failed += await shootAs(browser, site, kind, who, wanted);
      }
    }
    console.log(`${kind.kind} is done`);
  }
  return failed;
}

function sheetOf(files: readonly string[]): string {
  const figures = files.map(
    (file) =>
      `<figure><a href="${file}"><img src="${file}" alt="" loading="lazy"></a><figcaption>${file}</figcaption></figure>`,
  );
  const style = 'body{display:flex;flex-wrap:wrap;gap:1em;font:12px sans-serif}img{height:24em}';
  return `<!doctype html><title>Every screen</title><style>${style}</style>${figures.join('\n')}`;
}

if (asked.length === 0) rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
if (!canPrint) console.log('Without pdftoppm (poppler-utils) papers have no pictures.');
const site = await picturedSite();
const browser = await chromium.launch(launch);
try {
  if ((await shootAll(browser, site)) > 0) process.exitCode = 1;
  const files = readdirSync(folder).filter((file) => file.endsWith('.png'));
  writeFileSync(join(folder, 'index.html'), sheetOf(files.toSorted()));
  console.log(`${files.length} pictures: ${join(folder, 'index.html')}`);
} finally {
  await browser.close();
  await site.stop();
}
