import { expect } from '@playwright/test';
import { breaches } from '../fitness.ts';
import { cutOff, haveInspected, putUpFirst, test, visit } from './parts.ts';

test.slow();

test('after one visit a wall is practised to its review without signal, and read again after a reload', async ({
  page,
  context,
  site,
}) => {
  await visit(page, site);
  await cutOff(context, site);

  await page.getByRole('link', { name: 'Start practising' }).click();
  await page.getByRole('radio', { name: /On your own/ }).check();
  await page.getByRole('button', { name: 'Start this wall' }).click();
  for (let cards = 0; cards < 3; cards += 1) await putUpFirst(page);
  const wall = page.url();

  await page.reload();
  await expect(page.getByText('You go on where you left off.')).toBeVisible();
  await putUpFirst(page);
  await haveInspected(page);
  const main = page.getByRole('main');
  await expect(main.getByRole('img').first()).toBeVisible();
  const score = await main.innerText();

  await page.goto(wall);
  await expect(page.getByRole('heading', { name: 'Inspection' })).toBeVisible();
  await expect.poll(() => main.innerText()).toBe(score);

  await page.goto(`${site.address}/attempts`);
  await page
    .getByRole('main')
    .getByRole('link', { name: /Base of wall/ })
    .first()
    .click();
  await expect(page).toHaveURL(/\/attempts\/.+/);
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Inspection' })).toBeVisible();
});

/** The pages that show a part of the content. */
const pagesOf = (part: string): readonly string[] => {
  const [kind, id] = part.split('/');
  if (kind === 'methods') return [`/methods/${id}`, `/practise/${id}`, `/find/${id}`];
  return kind === 'takeoffs' ? [`/takeoff/${id}`] : [];
};

test('every sheet opens without signal at its own address', async ({ page, context, site }) => {
  test.setTimeout(240_000);
  await visit(page, site);
  const answer = await page.request.get(`${site.address}/content/current`);
  const { parts } = (await answer.json()) as { readonly parts: readonly string[] };
  const sheets = parts.flatMap(pagesOf);
  expect(sheets.length).toBeGreaterThan(10);
  const lists = ['/check', '/practise', '/find', '/methods', '/takeoff', '/glossary', '/attempts'];
  await cutOff(context, site);

  for (const address of [...lists, ...sheets]) {
    await page.goto(site.address + address);
    const heading = page.getByRole('heading', { level: 1 });
    await expect(heading, address).toBeVisible();
    await expect(heading, address).not.toHaveText(/cannot be shown|no sheet/);
  }
  await page.goto(`${site.address}/methods/base-of-wall`);
  await expect(page.getByRole('heading', { level: 2, name: /^\d+ steps$/ })).toBeVisible();
  await page.goto(`${site.address}/practise/base-of-wall`);
  await expect(page).toHaveURL(/seed=/);
  await expect(page.getByRole('group', { name: 'Bench' })).toBeVisible();
  await page.goto(`${site.address}/search?q=imprimador`);
  await expect(page.getByRole('status').filter({ hasText: /\d+ places? found/ })).toBeVisible();
  expect(await breaches(page)).toEqual([]);
});

test('language and paper are remembered without signal, and shown from the first moment', async ({
  page,
  context,
  site,
}) => {
  await page.emulateMedia({ colorScheme: 'light' });
  await visit(page, site);
  await cutOff(context, site);
  await page.getByRole('button', { name: 'Español' }).click();
  await page.getByRole('button', { name: 'Oscuro' }).click();

  const words: string[] = [];
  await page.exposeFunction('say', (word: string) => words.push(word));
  await page.addInitScript(() =>
    addEventListener('DOMContentLoaded', () => {
      const report = (window as unknown as { say: (word: string) => void }).say;
      new MutationObserver(() => {
        const title = document.querySelector('h1')?.textContent;
        if (title) report(title.trim());
      }).observe(document.body, { childList: true, subtree: true, characterData: true });
    }),
  );
  await page.goto(`${site.address}/glossary`, { waitUntil: 'commit' });
  await expect(page.locator('html')).toHaveAttribute('data-paper', 'dark');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Glosario');
  await expect(page.locator('html')).toHaveAttribute('lang', 'es');
  expect(new Set(words)).toEqual(new Set(['Glosario']));
  await expect(page.getByRole('contentinfo')).toContainText('Guardado en este dispositivo', {
    timeout: 60_000,
  });
  await expect(page.locator('link[rel=manifest]')).toHaveAttribute('href', '/es.webmanifest');
});

test('a browser that prefers Spanish reads it without signal though nobody chose it', async ({
  browser,
  site,
}) => {
  const context = await browser.newContext({ locale: 'es-MX', serviceWorkers: 'allow' });
  const page = await context.newPage();
  await page.goto(site.address);
  await expect(page.getByRole('contentinfo')).toContainText('Guardado en este dispositivo', {
    timeout: 60_000,
  });
  await cutOff(context, site);
  await page.goto(`${site.address}/glossary`);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Glosario');
  await context.close();
});

test('an address that is not kept says why, and leads on', async ({ page, context, site }) => {
  await visit(page, site);
  await cutOff(context, site);
  await page.goto(`${site.address}/nowhere/0123`);
  await expect(page.getByRole('main')).toContainText('There is no signal.');
  await page.goto(`${site.address}/sign-in`);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('This page needs a signal');
  await page.goto(`${site.address}/methods/no-such-method`);
  await expect(page.getByRole('main')).toContainText('There is no sheet at this address');
  await page.getByRole('link', { name: 'Go to the start' }).click();
  await expect(page.getByRole('link', { name: 'Start practising' })).toBeVisible();
});

test('what is no page, file or content is asked of the server and of nobody else', async ({
  page,
  context,
  site,
}) => {
  await visit(page, site);
  const status = (method: string, address: string) =>
    page.evaluate(
      ([how, where]) =>
        fetch(where!, { method: how! }).then(
          (answer) => answer.status,
          () => 'no answer',
        ),
      [method, address],
    );
  expect(await status('GET', '/api/attempts')).toBe(401);
  expect(await status('POST', '/content/current')).toBe(404);
  await cutOff(context, site);
  expect(await status('GET', '/content/current')).toBe(200);
  expect(await status('GET', '/api/attempts')).toBe('no answer');
  expect(await status('POST', '/content/current')).toBe('no answer');
});
