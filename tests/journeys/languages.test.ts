import { expect, test } from '@playwright/test';

test('a page is answered in the language the browser prefers', async ({ browser }) => {
  for (const [locale, language, words] of [
    ['es-MX', 'es', 'certificación'],
    ['en-US', 'en', 'certification'],
    ['fr-FR', 'en', 'certification'],
  ] as const) {
    const context = await browser.newContext({ locale });
    const page = await context.newPage();
    await page.goto('/');
    await expect(page.locator('html')).toHaveAttribute('lang', language);
    await expect(page.getByRole('main')).toContainText(words);
    await context.close();
  }
});

test('a page loads without a breach of its own content policy', async ({ page }) => {
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto('/', { waitUntil: 'networkidle' });
  expect(complaints).toEqual([]);
});
