import { expect } from '@playwright/test';
import { test, visit } from './parts.ts';

type Ready = { readonly installabilityErrors: readonly { readonly errorId: string }[] };

test('the browser finds nothing that keeps the app from being installed', async ({
  page,
  context,
  site,
}) => {
  await visit(page, site);
  const devtools = await context.newCDPSession(page);
  const manifest = await devtools.send('Page.getAppManifest');
  expect(manifest.errors).toEqual([]);
  expect(new URL(manifest.url).pathname).toBe('/en.webmanifest');
  const { installabilityErrors } = (await devtools.send('Page.getInstallabilityErrors')) as Ready;
  // A window of a test is never one that could be installed from.
  expect(
    installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito'),
  ).toEqual([]);
});

test('the bars of the browser follow the paper that is chosen', async ({ page, site }) => {
  await page.emulateMedia({ colorScheme: 'light' });
  await page.goto(site.address);
  const colours = () =>
    page
      .locator('meta[name=theme-color]')
      .evaluateAll((metas) =>
        (metas as HTMLMetaElement[])
          .filter(({ media }) => matchMedia(media).matches)
          .map(({ content }) => content),
      );
  const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  expect([await colours(), await paper()]).toEqual([['#f7f4ec'], 'rgb(247, 244, 236)']);
  await page.getByRole('button', { name: 'Dark' }).click();
  expect([await colours(), await paper()]).toEqual([['#14161a'], 'rgb(20, 22, 26)']);
  await page.reload();
  expect([await colours(), await paper()]).toEqual([['#14161a'], 'rgb(20, 22, 26)']);
});
