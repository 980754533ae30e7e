/**
 * Pictures of every screen, by size, language and paper, with a sheet to look over them:
 *
 *   npm run screenshots        then open test-results/screenshots/index.html
 */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from '@playwright/test';
import { Builder, wallOf } from '../journeys/building.ts';
import { shootCompany } from './company-pictures.ts';
import { launch } from './launch.ts';
import { pages } from './pages.ts';
import { serve } from './site.ts';

const folder = join(import.meta.dirname, '../../test-results/screenshots');

const sizes = { phone: { width: 360, height: 740 }, desktop: { width: 1280, height: 900 } };
const languages = { en: 'en-US', es: 'es-MX' } as const;
const papers = ['light', 'dark'] as const;

const name = (address: string): string =>
  address.replaceAll(/[^a-z0-9]+/g, '-').replaceAll(/^-|-$/g, '') || 'home';

/** A wall half built, and its review: what no address shows by itself. */
async function shootWork(page: Page, site: string, language: 'en' | 'es', file: string) {
  const { steps } = wallOf('base-of-wall', { corner: 'inside' });
  await page.goto(`${site}/practise/base-of-wall?mode=own&seed=4&corner=inside`, {
    waitUntil: 'networkidle',
  });
  // The strap and the primer left out, so that there is something to review.
  const played = steps.filter(({ id }) => !['fasten-strap', 'prime-wall'].includes(id));
  const builder = new Builder(page, language);
  await builder.build(played.slice(0, 10));
  // What sticks to the screen would else stand halfway down the picture.
  await page.evaluate(() => scrollTo({ top: 0, behavior: 'instant' }));
  await page.screenshot({
    path: join(folder, file.replace('.png', '-building.png')),
    fullPage: true,
  });
  await builder.build(played.slice(10));
  const inspect = { en: 'Have it inspected', es: 'Pedir la inspección' }[language];
  await page.getByRole('button', { name: inspect }).click();
  await page.getByRole('dialog').getByRole('button', { name: inspect }).click();
  await page.getByRole('heading', { level: 2 }).first().waitFor();
  await page.waitForTimeout(500);
  await page.screenshot({
    path: join(folder, file.replace('.png', '-review.png')),
    fullPage: true,
  });
  return [file.replace('.png', '-building.png'), file.replace('.png', '-review.png')];
}

/** Every size, language and paper, with what a browser is opened with for it. */
const kinds = Object.entries(sizes).flatMap(([size, viewport]) =>
  Object.entries(languages).flatMap(([language, locale]) =>
    papers.map((colorScheme) => ({
      kind: `${size}-${language}-${colorScheme}`,
      language: language as keyof typeof languages,
      context: {
        viewport,
        locale,
        colorScheme,
        reducedMotion: 'reduce',
        serviceWorkers: 'block',
      } as const,
    })),
  ),
);

async function shoot(browser: Browser, site: string): Promise<readonly string[]> {
  const files: string[] = [];
  for (const { kind, language, context: options } of kinds) {
    const context = await browser.newContext(options);
    const page = await context.newPage();
    for (const address of pages) {
      const file = `${name(address)}-${kind}.png`;
      await page.goto(site + address, { waitUntil: 'networkidle' });
      await page.screenshot({ path: join(folder, file), fullPage: true });
      files.push(file);
    }
    files.push(...(await shootWork(page, site, language, `work-${kind}.png`)));
    await context.close();
    console.log(`${kind}: ${pages.length + 2} pictures`);
  }
  await shootCompany(browser, kinds, async (page, shown) => {
    await page.screenshot({ path: join(folder, `${shown}.png`), fullPage: true });
    files.push(`${shown}.png`);
  });
  return files.toSorted();
}

rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
const site = await serve();
const browser = await chromium.launch(launch);
try {
  const files = await shoot(browser, site.address);
  const figures = files.map(
    (file) =>
      `<figure><a href="${file}"><img src="${file}" alt=""></a><figcaption>${file}</figcaption></figure>`,
  );
  const style = 'body{display:flex;flex-wrap:wrap;gap:1em;font:12px sans-serif}img{height:24em}';
  writeFileSync(
    join(folder, 'index.html'),
    `<!doctype html><title>Every screen</title><style>${style}</style>${figures.join('\n')}`,
  );
} finally {
  await browser.close();
  await site.stop();
}
