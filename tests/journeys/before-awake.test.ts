import { expect, type Page, test } from '@playwright/test';
import { awake } from './building.ts';

/** The page is drawn, and its scripts come only when `let` is called. */
async function scriptsHeld(page: Page): Promise<{ readonly let: () => void }> {
  let go = (): void => undefined;
  const gone = new Promise<void>((resolve) => {
    go = resolve;
  });
  await page.route('**/_app/immutable/entry/**', async (route) => {
    await gone;
    await route.continue();
  });
  return { let: () => go() };
}

test('what is pressed and typed before the page hears it is done when it does', async ({
  page,
}) => {
  const scripts = await scriptsHeld(page);
  await page.goto('/search', { waitUntil: 'commit' });
  await page.getByRole('searchbox').fill('corner');
  const language = page.getByRole('button', { name: 'Español' });
  await language.click();
  // Pressed again, since nothing happened.
  await language.click();
  await expect(page.locator('html')).toHaveAttribute('lang', 'en');
  scripts.let();
  await awake(page);
  await expect(page.locator('html')).toHaveAttribute('lang', 'es');
  await expect(page.getByRole('searchbox')).toHaveValue('corner');
  await expect(page.getByRole('main').getByRole('listitem').first()).toBeVisible();
});

test('keys are given again in their order, each as often as it was pressed', async ({ page }) => {
  const scripts = await scriptsHeld(page);
  await page.goto('/takeoff/sheet-girth?seed=12', { waitUntil: 'commit' });
  const keys = page.getByRole('group', { name: 'Keys' }).first();
  for (const key of ['1', '1', '5']) {
    await keys.getByRole('button', { name: key, exact: true }).click();
  }
  scripts.let();
  await awake(page);
  await expect(page.getByRole('main').getByRole('textbox').first()).toHaveValue('115');
});

test('a choice made before the page hears it stands', async ({ page }) => {
  const scripts = await scriptsHeld(page);
  await page.goto('/takeoff', { waitUntil: 'commit' });
  const boxes = page.getByRole('main').getByRole('radio');
  await boxes.nth(1).check({ force: true });
  scripts.let();
  await awake(page);
  await expect(boxes.nth(1)).toBeChecked();
});
