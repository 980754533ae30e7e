import { expect, type Page } from '@playwright/test';
import { isFitEverywhere } from '../fitness.ts';
import { test } from './site.ts';

const password = 'three plain words';

async function setUp(page: Page, code: string): Promise<void> {
  await page.goto('/start');
  await page.getByLabel('Set-up code').first().fill(code);
  await page.getByLabel('Name of the company').fill('Test Walls');
  await page.getByLabel('Your name').fill('Olga Office');
  await page.getByLabel('Email').fill('office@walls.example');
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Set it up' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Test Walls');
}

/** On a phone the sections are folded up. */
async function section(page: Page, name: string): Promise<void> {
  const sections = page.getByRole('navigation', { name: 'Test Walls' });
  await expect(sections).toBeVisible();
  const fold = sections.locator('summary');
  if (await fold.isVisible()) await fold.click();
  await sections.getByRole('link', { name }).click();
}

async function addCrew(page: Page, name: string): Promise<void> {
  await section(page, 'Crews');
  await page.getByLabel('Name of the crew').last().fill(name);
  await page.getByRole('button', { name: 'Make a crew' }).click();
  await expect(page.getByRole('heading', { name })).toBeVisible();
}

async function addPerson(page: Page, name: string, crew: string): Promise<void> {
  await section(page, 'People');
  await page.getByText('Add a person').click();
  const form = page.locator('form[action="?/create"]');
  await form.getByLabel('Name').fill(name);
  await form.getByLabel('Number').fill('17');
  await form.getByLabel('Crew').selectOption({ label: crew });
  await form.getByRole('button', { name: 'Add' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(name);
}

const roster = (text: string) => ({
  name: 'roster.csv',
  mimeType: 'text/csv',
  buffer: Buffer.from(text),
});

test('a company takes somebody on by a crew card, and a roster by its file', async ({
  browser,
  site,
}) => {
  test.setTimeout(240_000);
  const options = {
    baseURL: site.address,
    viewport: test.info().project.use.viewport ?? null,
    locale: 'en-US',
    serviceWorkers: 'block' as const,
  };
  const office = await browser.newContext(options);
  const page = await office.newPage();
  await setUp(page, await site.setUpCode());
  await addCrew(page, 'North side');
  await isFitEverywhere(page, 'people-1');
  await addPerson(page, 'Ana María López', 'North side');
  await isFitEverywhere(page, 'people-2');

  await page.getByRole('button', { name: 'Make a crew card' }).click();
  await expect(page.getByRole('main').getByRole('status')).toContainText('shown this once');
  await isFitEverywhere(page, 'people-3');
  const address = await page.getByText(/\/card\//).textContent();
  expect(address).toMatch(new RegExp(`^${site.address}/card/[a-z2-7-]{30,}$`));
  if (process.env['JOURNEY_PICTURES']) {
    await page.emulateMedia({ media: 'print' });
    await page.screenshot({
      path: `${process.env['JOURNEY_PICTURES']}/print-${test.info().project.name}.png`,
      fullPage: true,
    });
    await page.emulateMedia({ media: 'screen' });
  }

  const phone = await browser.newContext(options);
  const ana = await phone.newPage();
  await ana.goto('/card/aaaaa-bbbbb');
  await expect(ana.getByRole('heading', { level: 1 })).toHaveText('This card does not work');
  await isFitEverywhere(ana, 'people-4');
  await ana.goto(address ?? '');
  await isFitEverywhere(ana, 'people-5');
  await expect(ana.getByLabel('User name or email')).toHaveValue('ana.lopez');
  await ana.getByLabel('New password').fill(password);
  await ana.getByRole('button', { name: 'Make the account' }).click();
  await expect(ana.getByRole('main')).toContainText('apprentice');
  await expect(ana.getByRole('navigation', { name: 'Test Walls' })).not.toContainText('People');
  await ana.goto(address ?? '');
  await expect(ana.getByRole('heading', { level: 1 })).toHaveText('This card does not work');
  expect((await ana.request.get(new URL(page.url()).pathname)).status()).toBe(403);

  await section(page, 'People');
  await page.getByRole('link', { name: 'Read in a roster' }).click();
  await isFitEverywhere(page, 'people-6');
  const file = page.getByLabel('Roster file');
  await file.setInputFiles(roster('x'.repeat(1.2 * 1024 * 1024)));
  await page.getByRole('button', { name: 'See what it would change' }).click();
  await expect(page.getByRole('alert')).toHaveText('The file is larger than 1 MB. Split it.');
  await file.setInputFiles(
    roster('name,number,crew,roles\nAna María López,17,South side,\nEva,,,boss'),
  );
  await page.getByRole('button', { name: 'See what it would change' }).click();
  await expect(page.getByRole('main')).toContainText('Crew: North side becomes South side');
  await expect(page.getByRole('main')).toContainText('“boss” is no role');
  await isFitEverywhere(page, 'people-7');

  const another = page.getByLabel('Choose another file');
  await another.setInputFiles(
    roster('name;número;cuadrilla\nAna María López;17;South side\nEva;;'),
  );
  await page.getByRole('button', { name: 'See what it would change' }).click();
  await page.getByRole('button', { name: 'Write it' }).click();
  await expect(page.getByRole('main').getByRole('status')).toHaveText(
    'Written: 1 added, 1 changed, 1 crews made.',
  );

  await section(page, 'People');
  await page.getByRole('searchbox', { name: 'Find somebody' }).fill('lopez');
  await page.getByRole('button', { name: 'Find' }).click();
  const rows = page.locator('ul.people').getByRole('listitem');
  await expect(rows).toHaveCount(1);
  await expect(rows).toContainText('South side');
  await isFitEverywhere(page, 'people-8');
  const saved = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save the roster' }).click();
  expect((await saved).suggestedFilename()).toMatch(/^roster-.*\.csv$/);

  await rows.getByRole('link').click();
  await page.getByRole('button', { name: 'Ana María López leaves the company' }).click();
  await expect(page.getByRole('main').getByRole('status')).toContainText('left on');
  expect((await ana.request.get(page.url().replace(/\/people.*/, ''))).status()).toBe(404);
  await page.getByRole('button', { name: 'Let them come back' }).click();
  await expect(page.getByRole('button', { name: 'Save the details' })).toBeVisible();
  expect((await ana.request.get(page.url().replace(/\/people.*/, ''))).status()).toBe(200);
  await office.close();
  await phone.close();
});
