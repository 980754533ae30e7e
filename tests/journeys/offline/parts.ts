import { type BrowserContext, expect, type Page, test as base } from '@playwright/test';
import { serve } from '../../browser/site.ts';

/** Where the app is: a server that can be taken away, or put in the place of another. */
type Place = {
  readonly address: string;
  readonly stop: () => Promise<void>;
  readonly serve: (folder: string) => Promise<void>;
};

/** Each journey has a server of its own. */
export const test = base.extend<{ site: Place }>({
  site: async ({}, use) => {
    let site = await serve();
    await use({
      address: site.address,
      stop: () => site.stop(),
      serve: async (folder) => {
        await site.stop();
        site = await serve(folder, site.port);
      },
    });
    await site.stop();
  },
});

/** One visit: to the first page, until the foot of it says that all is kept. */
export async function visit(page: Page, site: Place): Promise<void> {
  await page.goto(site.address);
  await expect(page.getByRole('contentinfo')).toContainText('Kept on this device', {
    timeout: 60_000,
  });
}

/** No radio, and nobody who would answer. */
export async function cutOff(context: BrowserContext, site: Place): Promise<void> {
  await site.stop();
  await context.setOffline(true);
}

/** Puts up the card that lies first on the bench, with its settings as they stand. */
export async function putUpFirst(page: Page): Promise<void> {
  const cards = page.getByRole('group', { name: 'Bench' }).getByRole('radio');
  await expect(cards.first()).toBeVisible();
  const count = await cards.count();
  const card = page.locator('label.card').first();
  await card.evaluate((row) => row.scrollIntoView({ block: 'start', behavior: 'instant' }));
  await card.click();
  const leave = page.getByRole('button', { name: /^Leave it at / });
  while ((await leave.count()) > 0) await leave.first().click();
  await page.getByRole('button', { name: 'Put it up' }).click();
  await expect(cards).toHaveCount(count - 1);
}

export async function haveInspected(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Have it inspected' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Have it inspected' }).click();
  await expect(page.getByRole('heading', { name: 'Inspection' })).toBeVisible();
}
