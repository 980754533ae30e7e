import { expect, test } from '@playwright/test';
import { walls } from '../content/walls.ts';

const methods = [...new Set(walls.map(({ sequence }) => sequence.method.id))];

/** The wall of a method that takes the most steps. */
const longest = (id: string) =>
  walls
    .map(({ sequence }) => sequence)
    .filter(({ method }) => method.id === id)
    .reduce((a, b) => (b.steps.length > a.steps.length ? b : a));

/** Chromium writes each page of a document as an object of its own, uncompressed. */
const pagesOf = (document: Buffer): number =>
  document.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;

for (const language of ['en', 'es']) {
  for (const id of methods) {
    test(`${id} in ${language} prints on two sheets, with its picture @desktop`, async ({
      page,
      baseURL,
    }) => {
      test.slow();
      await page
        .context()
        .addCookies([{ name: 'PARAGLIDE_LOCALE', value: language, url: baseURL ?? '' }]);
      const print = async (asked: Readonly<Record<string, string>>) => {
        const query = new URLSearchParams(asked).toString();
        await page.goto(`/methods/${id}?${query}`, { waitUntil: 'networkidle' });
        return pagesOf(await page.pdf({ preferCSSPageSize: true }));
      };
      const usual = await print({});
      expect(usual).toBeGreaterThan(0);
      expect(usual).toBeLessThanOrEqual(2);
      // The longest wall of all takes both sides of them.
      expect(await print(longest(id).site)).toBeLessThanOrEqual(4);

      await page.emulateMedia({ media: 'print' });
      await expect(page.locator('.of-section svg')).toBeVisible();
      // Nothing is wider than a letter sheet within its margins: Chromium would print all of it small.
      await page.setViewportSize({ width: 749, height: 960 });
      await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      const width = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(width).toBeLessThanOrEqual(749);
    });
  }
}
