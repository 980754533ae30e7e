import { expect, type Page } from '@playwright/test';
import { anotherBuild, anotherContent } from '../../browser/versions.ts';
import { haveInspected, putUpFirst, test, visit } from './parts.ts';

const building = 600_000;

/** The signal comes back, and with it the moment to look for something newer. */
async function regainSignal(page: Page): Promise<void> {
  await page.context().setOffline(true);
  await page.context().setOffline(false);
}

/** Those that are here as a whole. */
const editions = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async () => {
    const names = (await caches.keys()).filter((name) => name.startsWith('underlap/edition/'));
    const marks = await Promise.all(
      names.map((cacheName) => caches.match('/whole-edition', { cacheName })),
    );
    return names.filter((_, place) => marks[place]);
  });

const buildInUse = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const answer = await fetch('/_app/version.json');
    return ((await answer.json()) as { readonly version: string }).version;
  });

const announced = (page: Page) => page.getByText('A new version is ready.');

test('a new build is announced when the wall is finished, and taken on a tap', async ({
  page,
  site,
}) => {
  test.setTimeout(building);
  const { folder, start } = anotherBuild();
  await visit(page, site);
  await page.goto(`${site.address}/practise/base-of-wall?mode=own&seed=4`);
  await putUpFirst(page);
  const before = await buildInUse(page);

  // As after an update of the server.
  await site.serve(folder);
  await regainSignal(page);
  await expect.poll(() => editions(page), { timeout: 60_000 }).toHaveLength(2);
  await page.reload();
  await expect(page.getByText('You go on where you left off.')).toBeVisible();
  await putUpFirst(page);
  await expect(announced(page)).toBeHidden();
  expect(await buildInUse(page)).toBe(before);

  await haveInspected(page);
  await expect(announced(page)).toBeVisible();
  await page.getByRole('button', { name: 'Español' }).click();
  await expect(page.getByText('Hay una versión nueva lista.')).toBeVisible();
  await page.getByRole('button', { name: 'English' }).click();
  await page.goto(site.address);
  await expect(page.getByRole('link', { name: 'Start practising' })).toBeVisible();

  await page.getByRole('button', { name: 'Use it' }).click();
  await expect(page.getByRole('link', { name: start })).toBeVisible();
  await expect(announced(page)).toBeHidden();
  expect(await buildInUse(page)).not.toBe(before);
  expect(await editions(page)).toHaveLength(1);

  await site.stop();
  await page.goto(`${site.address}/practise/base-of-wall?mode=own&seed=4`);
  await expect(page.getByRole('heading', { name: 'Inspection' })).toBeVisible();
  await page.goto(site.address);
  await expect(page.getByRole('link', { name: start })).toBeVisible();
});

test('changed content is announced, taken on a tap, and followed by other windows', async ({
  page,
  context,
  site,
}) => {
  test.setTimeout(building);
  const { folder, title } = anotherContent();
  await visit(page, site);
  const other = await context.newPage();
  await other.goto(`${site.address}/glossary`);
  await expect(other.getByRole('heading', { level: 1 })).toBeVisible();

  await site.serve(folder);
  await regainSignal(page);
  await expect(announced(page)).toBeVisible({ timeout: 60_000 });
  await expect(announced(other)).toBeVisible();
  await page.getByRole('navigation').getByRole('link', { name: 'Methods' }).click();
  await expect(page.getByRole('link', { name: /Base of wall/ }).first()).toBeVisible();
  await expect(page.getByText(title)).toHaveCount(0);

  await page.getByRole('button', { name: 'Use it' }).click();
  await expect(page.getByText(title).first()).toBeVisible();
  await expect(announced(page)).toBeHidden();
  expect(await editions(page)).toHaveLength(1);

  await expect(announced(other)).toBeVisible();
  await site.stop();
  await other.getByRole('navigation').getByRole('link', { name: 'Methods' }).click();
  await expect(other.getByText(title).first()).toBeVisible();
  await expect(announced(other)).toBeHidden();
});
