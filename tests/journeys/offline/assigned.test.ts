import { type BrowserContext, expect, type Page } from '@playwright/test';
import { Builder, wallOf } from '../building.ts';
import { isFitInBoth } from '../fitness.ts';
import { test } from '../people/site.ts';

const password = 'three plain words';

async function setUp(page: Page, code: string): Promise<string> {
  await page.goto('/start');
  await page.getByLabel('Set-up code').first().fill(code);
  await page.getByLabel('Name of the company').fill('Test Walls');
  await page.getByLabel('Your name').fill('Tomás Trainer');
  await page.getByLabel('Email').fill('office@walls.example');
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Set it up' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Test Walls');
  return new URL(page.url()).pathname;
}

/** The address of a crew card for a new apprentice. */
async function takeOn(page: Page, company: string, name: string): Promise<string> {
  await page.goto(`${company}/people`);
  await page.getByText('Add a person').click();
  const form = page.locator('form[action="?/create"]');
  await form.getByLabel('Name').fill(name);
  await form.getByRole('button', { name: 'Add' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(name);
  await page.getByRole('button', { name: 'Make a crew card' }).click();
  return (await page.getByText(/\/card\//).textContent()) ?? '';
}

const foot = (page: Page) => page.getByRole('contentinfo');

async function giveWall(page: Page, company: string): Promise<void> {
  await page.goto(`${company}/assignments`);
  await isFitInBoth(page, 'assigned-1');
  await page.getByRole('link', { name: 'Give work' }).click();
  await page.getByRole('button', { name: 'Give it' }).click();
  await expect(page.getByText('Write a title.')).toBeVisible();
  await expect(page.getByText('Choose a crew or a person.')).toBeVisible();
  await page.getByLabel('Title', { exact: true }).fill('First wall');
  await page.getByText('Base of wall', { exact: true }).first().click();
  await page.getByRole('button', { name: /^Add this wall ?: Base of wall$/ }).click();
  await expect(page.getByRole('button', { name: /^Take out ?: Base of wall$/ })).toBeVisible();
  await page.getByLabel('Person by name or number').fill('ana');
  await page.getByRole('button', { name: 'Find', exact: true }).last().click();
  await page.getByRole('button', { name: /^Add ?:? Ana López$/ }).click();
  await expect(page.getByRole('button', { name: /^Take out ?: Ana López$/ })).toBeVisible();
  await expect(page.getByLabel('Title', { exact: true })).toHaveValue('First wall');
  await isFitInBoth(page, 'assigned-2');
  await page.getByRole('button', { name: 'Give it' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('First wall');
  await expect(page.getByRole('main')).toContainText('Not started');
  await isFitInBoth(page, 'assigned-3');
}

/** Takes the wall from the list of what is due, builds it without signal, and has it inspected. */
async function buildWithoutSignal(page: Page, context: BrowserContext): Promise<void> {
  await page.goto('/due');
  await expect(foot(page)).toContainText('Kept on this device', { timeout: 60_000 });
  await expect(page.getByRole('heading', { name: 'First wall' })).toBeVisible();
  await isFitInBoth(page, 'assigned-4');
  await context.setOffline(true);
  await page.reload();
  await expect(page.getByRole('heading', { name: 'First wall' })).toBeVisible();
  await page.getByRole('link', { name: /^Do it ?: Base of wall$/ }).click();
  await expect(page.getByRole('main')).toContainText('Assigned mock-up');
  await new Builder(page).build(wallOf('base-of-wall').steps);
  await page.getByRole('button', { name: 'Have it inspected' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Have it inspected' }).click();
  await expect(page.getByRole('heading', { name: 'Inspection' })).toBeVisible();
  await expect(page.getByRole('main')).toContainText('It is sent to your company');
  await expect(foot(page)).toContainText('1 waits for signal');
}

test('a trainer gives a wall; it is built without signal, sent once, commented and asked for again', async ({
  browser,
  site,
}) => {
  test.setTimeout(240_000);
  const desk = await browser.newContext({
    baseURL: site.address,
    viewport: { width: 1280, height: 800 },
    isMobile: false,
    locale: 'en-US',
    serviceWorkers: 'block',
  });
  const trainer = await desk.newPage();
  const company = await setUp(trainer, await site.setUpCode());
  const card = await takeOn(trainer, company, 'Ana López');
  await giveWall(trainer, company);

  const context = await browser.newContext({
    baseURL: site.address,
    viewport: { width: 360, height: 740 },
    locale: 'en-US',
    serviceWorkers: 'allow',
  });
  const phone = await context.newPage();
  await phone.goto(card);
  await phone.getByLabel('New password').fill(password);
  await phone.getByRole('button', { name: 'Make the account' }).click();
  await expect(phone.getByRole('main')).toContainText('apprentice');
  await buildWithoutSignal(phone, context);

  const posts: string[] = [];
  phone.on('request', (request) => {
    if (request.method() === 'POST') posts.push(new URL(request.url()).pathname);
  });
  await context.setOffline(false);
  await expect(foot(phone)).toContainText('All sent');
  await expect(phone.getByRole('main')).toContainText('Sent to your company.');
  await phone.getByRole('link', { name: 'Back to what is due' }).click();
  await expect(phone.getByRole('main')).toContainText('Passed');
  await phone.reload();
  await expect(phone.getByRole('main')).toContainText('Passed');
  expect(posts).toEqual([`${company}/attempts`]);

  await trainer.reload();
  await trainer.getByRole('link', { name: 'Ana López' }).click();
  await expect(trainer.getByRole('heading', { name: 'Attempts: Ana López' })).toBeVisible();
  await isFitInBoth(trainer, 'assigned-5');
  await trainer.getByRole('link', { name: /100.*Base of wall/ }).click();
  await expect(trainer.getByRole('heading', { name: 'Inspection' })).toBeVisible();
  await trainer.getByRole('button', { name: 'Comment' }).click();
  await expect(trainer.getByText('Write a few words.')).toBeVisible();
  await trainer.getByLabel('Say something of this attempt').fill('Good laps.');
  await trainer.getByRole('button', { name: 'Comment' }).click();
  await expect(trainer.getByText('Your comment is kept.')).toBeVisible();
  await trainer.getByLabel('Say something of this attempt').fill('Once more, please.');
  await trainer.getByRole('button', { name: 'Ask for it again' }).click();
  await expect(trainer.getByText('It is asked for again.')).toBeVisible();
  await isFitInBoth(trainer, 'assigned-6');
  const attempt = new URL(trainer.url()).pathname;

  await phone.goto('/due');
  await expect(phone.getByRole('main')).toContainText('Good laps.');
  await expect(phone.getByRole('main')).toContainText('Asked for again');
  await isFitInBoth(phone, 'assigned-7');
  await phone
    .getByRole('link', { name: /See the attempt/ })
    .first()
    .click();
  await expect(phone.getByText('Once more, please.')).toBeVisible();
  await expect(phone.getByRole('button', { name: 'Comment' })).toHaveCount(0);
  await isFitInBoth(phone, 'assigned-8');
  expect((await phone.request.get(`${company}/assignments`)).status()).toBe(403);

  const other = await takeOn(trainer, company, 'Bo Brown');
  const second = await browser.newContext({ baseURL: site.address, locale: 'en-US' });
  const stranger = await second.newPage();
  await stranger.goto(other);
  await stranger.getByLabel('New password').fill(password);
  await stranger.getByRole('button', { name: 'Make the account' }).click();
  await expect(stranger.getByRole('main')).toContainText('apprentice');
  expect((await stranger.request.get(attempt)).status()).toBe(404);
  await Promise.all([desk.close(), context.close(), second.close()]);
});
