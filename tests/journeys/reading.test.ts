import { expect, test } from '@playwright/test';
import { awake, open } from './building.ts';
import { breaches, faintOnDark, overhang } from './fitness.ts';

for (const address of [
  '/',
  '/methods',
  '/methods/base-of-wall',
  '/glossary',
  '/search?q=imprimador',
  '/no-such-sheet',
]) {
  test(`${address} is fit for all on both papers and never runs sideways @both`, async ({
    page,
  }) => {
    test.slow();
    await open(page, address);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    expect(await overhang(page)).toBe(0);
    expect(await breaches(page)).toEqual([]);
    expect(await faintOnDark(page)).toEqual([]);
  });
}

test('from the first page to the very step, through both languages @both', async ({ page }) => {
  await page.goto('/');
  await awake(page);
  const loads: string[] = [];
  page.on('request', (request) => {
    if (request.isNavigationRequest()) loads.push(request.url());
  });

  await page.getByRole('link', { name: 'Read: Base of wall' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Base of wall' })).toBeVisible();
  const steps = page.getByRole('heading', { level: 2, name: /^\d+ steps$/ });
  await expect(steps).toBeVisible();

  await page.getByRole('button', { name: 'Español' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Base del muro' })).toBeVisible();
  await expect(page.locator('html')).toHaveAttribute('lang', 'es');
  await expect(page.getByRole('heading', { level: 2, name: /^\d+ pasos$/ })).toBeVisible();

  await page
    .getByRole('navigation', { name: 'Secciones' })
    .getByRole('link', { name: 'Buscar' })
    .click();
  await page.getByRole('searchbox').fill('barra de terminacion');
  const step = page.getByRole('listitem').filter({ hasText: /^Paso/ }).first();
  await expect(step).toBeVisible();
  const found = step.getByRole('link');
  const anchor = new URL((await found.getAttribute('href')) ?? '', page.url()).hash;
  await found.click();
  await expect(page.locator(anchor)).toBeInViewport();
  expect(loads).toEqual([]);

  await page.reload();
  await expect(page.locator('html')).toHaveAttribute('lang', 'es');
});

test('another wall has other steps, at an address that can be shared', async ({ page }) => {
  await page.goto('/methods/base-of-wall');
  const strap = page.locator('#fasten-strap');
  await expect(strap).toBeVisible();

  await page.getByRole('combobox', { name: 'Backing' }).selectOption('concrete-masonry');
  await expect(strap).toHaveCount(0);
  await expect(page).toHaveURL(/backing=concrete-masonry/);

  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await expect(strap).toHaveCount(0);
});

test('a wall that the method does not know is named, and the usual one shown', async ({ page }) => {
  await page.goto('/methods/base-of-wall?backing=straw');
  await expect(page.getByRole('alert')).toContainText('backing: straw (steel-stud');
  await expect(page.locator('#fasten-strap')).toBeVisible();
});

test('search is worked with the keyboard alone @desktop', async ({ page }) => {
  await open(page, '/search');
  await page.getByRole('searchbox').focus();
  await page.keyboard.type('fishmouth');
  await expect(page.getByRole('status').filter({ hasText: /\d+ places? found/ })).toBeVisible();
  await expect(page).toHaveURL(/q=fishmouth/);
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/#/);
  const target = page.locator(new URL(page.url()).hash);
  await expect(target).toBeInViewport();
});

test('the skip link leads past the head of the page @desktop', async ({ page }) => {
  await open(page, '/glossary');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('link', { name: 'Skip to the sheet' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('main')).toBeFocused();
});

test('dark paper is remembered and drawn from the first moment', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'light' });
  await open(page, '/');
  await page.getByRole('button', { name: 'Dark' }).click();
  await page.reload({ waitUntil: 'commit' });
  await expect(page.locator('html')).toHaveAttribute('data-paper', 'dark');
});

test('an address without a sheet says so and leads on, in both languages', async ({ page }) => {
  const response = await page.goto('/methods/no-such-method');
  expect(response?.status()).toBe(404);
  await expect(page.getByRole('main')).toContainText('There is no sheet at this address');
  await page.getByRole('button', { name: 'Español' }).click();
  await expect(page.getByRole('main')).toContainText('No hay ninguna hoja en esta dirección');
  await page.getByRole('link', { name: 'Ir al inicio' }).click();
  await expect(page).toHaveURL('/');
});

test('content is kept for ever under its revision and asked anew without one', async ({
  request,
}) => {
  const { revision } = (await (await request.get('/content/current')).json()) as {
    revision: string;
  };
  const kept = await request.get(`/content/${revision}/methods/base-of-wall`);
  expect(kept.headers()['cache-control']).toContain('immutable');
  const moved = await request.get('/content/0123456789abcdef/methods/base-of-wall', {
    maxRedirects: 0,
  });
  expect(moved.status()).toBe(307);
  expect(moved.headers()['location']).toBe(`/content/${revision}/methods/base-of-wall`);
  expect((await request.get(`/content/${revision}/methods/nothing`)).status()).toBe(404);
});
