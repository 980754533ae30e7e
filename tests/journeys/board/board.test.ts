import { expect, type Page } from '@playwright/test';
import { isFitEverywhere } from '../fitness.ts';
import { type CertifiedSite, test } from './certified-site.ts';

async function signIn(page: Page, { address, company, password, logins }: CertifiedSite) {
  await page.goto(`${address}/sign-in`);
  await page
    .locator('input[name=name]')
    .fill(logins.find(({ role }) => role === 'office')!.username);
  await page.locator('input[name=password]').fill(password);
  await page.locator('main form button').first().click();
  await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
  return `${address}/company/${company}`;
}

const dayIn = (days: number): string =>
  new Date(Date.now() + days * 24 * 60 * 60 * 1000).toISOString().slice(0, 10);

test('the office narrows the board, plans a job, sees what is missing, and sends who can go', async ({
  page,
  site,
}) => {
  test.setTimeout(240_000);
  const home = await signIn(page, site);
  await page.goto(home);
  await expect(page.getByRole('link', { name: /suspended: Base of wall installer/ })).toBeVisible();

  await page.goto(`${home}/board`);
  await page.getByLabel('Qualification').selectOption({ label: 'Base of wall installer' });
  await page.getByLabel('State').selectOption({ label: 'Suspended' });
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  await expect(page.getByRole('row')).toHaveCount(3);
  await isFitEverywhere(page, 'board-1');
  await page.getByRole('rowheader').getByRole('link').click();
  await expect(page.getByRole('heading', { name: 'Base of wall installer' })).toBeVisible();
  await isFitEverywhere(page, 'board-2');

  const plan = async (title: string, leads: string): Promise<void> => {
    await page.goto(`${home}/jobs/new`);
    await page.getByLabel('Job', { exact: true }).fill(title);
    await page.getByLabel('Place').fill('Harrow Mill');
    await page.getByLabel('First day').fill(dayIn(3));
    await page.getByLabel('Last day').fill(dayIn(9));
    const roles = page.getByRole('group', { name: /^Role/ });
    await roles.nth(0).getByLabel('Name of the role').fill('Installers');
    await roles.nth(0).getByLabel('How many').fill('2');
    await roles.nth(0).getByLabel('Base of wall installer').check();
    await roles.nth(1).getByLabel('Name of the role').fill('Lead');
    await roles.nth(1).getByLabel('How many').fill(leads);
    await roles.nth(1).getByLabel('Crew lead').check();
    await page.getByRole('button', { name: /Keep it/ }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(title);
  };

  await plan('Too much', '3');
  await expect(page.getByText('1 of 5 places stay empty')).toBeVisible();
  await expect(page.getByText('Lead: 3 places, and 2 free who hold what they ask.')).toBeVisible();
  await expect(
    page.getByRole('heading', { name: 'The cheapest training that fills it' }),
  ).toBeVisible();
  await isFitEverywhere(page, 'board-3');
  await page.goto(home);
  await expect(page.getByRole('link', { name: /Too much: 1 places empty/ })).toBeVisible();

  await plan('East wall', '2');
  await expect(page.getByText('Every place is filled')).toBeVisible();
  await page.getByRole('button', { name: 'Send these 4' }).click();
  await expect(page.getByText('These were sent.')).toBeVisible();
  await page.goto(`${home}/board/coverage`);
  await isFitEverywhere(page, 'board-4');
});
