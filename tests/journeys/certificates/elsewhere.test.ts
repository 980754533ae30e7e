import { expect, type Page } from '@playwright/test';
import { isFitEverywhere } from '../fitness.ts';
import { signedIn, test } from './site.ts';

async function makeToken(page: Page): Promise<string> {
  await page.getByLabel('What it is for').fill('Payroll');
  await page
    .getByRole('group', { name: 'What it is good for' })
    .getByRole('checkbox')
    .first()
    .check();
  await page.getByRole('button', { name: 'Make the token' }).click();
  return page.getByRole('textbox', { name: 'The token' }).inputValue();
}

const headings = 'person,certificate,issuer,certificate number,issued on,last day';
const look = (page: Page) => page.getByRole('button', { name: 'See what it would change' }).click();

test('the office lets a program in and out again, and reads in what was issued elsewhere', async ({
  browser,
  site,
}) => {
  const page = await signedIn(browser, site, site.office);
  const home = `/company/${site.company}`;
  await page.goto(`${home}/tokens`);
  const token = await makeToken(page);
  await isFitEverywhere(page, 'tokens');
  const asked = async () => {
    const headers = { authorization: `Bearer ${token}` };
    const answer = await fetch(`${site.address}/api/people`, { headers });
    return { status: answer.status, told: await answer.text() };
  };
  expect(await asked()).toMatchObject({ status: 200, told: expect.stringContaining('Ana María') });
  await page.goto(`${home}/tokens`);
  await page.locator('summary', { hasText: 'Revoke' }).click();
  await page.getByRole('button', { name: /Payroll/ }).click();
  await expect(page.getByRole('main').getByRole('status')).toBeVisible();
  expect(await asked()).toMatchObject({
    status: 401,
    told: expect.stringContaining('TOKEN_REVOKED'),
  });

  await page.goto(`${home}/board`);
  await page.getByRole('link', { name: 'Issued elsewhere' }).click();
  const rows = [
    headings,
    'Ana Maria Ruiz,Working at height,Harrow County Trades,HT-204,2025-03-01,2099-03-01',
    'Ana María Ruiz,First aid,Red Barn School,,3/1/2025,',
  ].join('\n');
  await page.getByLabel('File of certificates').setInputFiles({
    name: 'elsewhere.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(rows),
  });
  await look(page);
  await expect(page.getByText('Issued on: “3/1/2025” is no day.')).toBeVisible();
  await isFitEverywhere(page, 'elsewhere-1');

  const paste = page.locator('summary', { hasText: 'Or paste the rows here' });
  await paste.focus();
  await page.keyboard.press('Enter');
  await page.getByRole('textbox', { name: 'Rows' }).fill(rows.replace('3/1/2025', '2025-03-01'));
  await look(page);
  await page.getByRole('button', { name: 'Write it' }).click();
  await expect(page.getByRole('main').getByRole('status')).toHaveText(
    'Written down as declared: 2. There already: 0.',
  );

  await page.getByRole('main').getByRole('link', { name: 'Competence board' }).click();
  await page.getByRole('rowheader').getByRole('link', { name: 'Ana María Ruiz' }).click();
  await expect(page.getByText('Working at height')).toBeVisible();
  await expect(page.getByText(/issued by Harrow County Trades, number HT-204/)).toBeVisible();
  await expect(page.getByText('First aid')).toBeVisible();
  await expect(page.getByText(/^Declared, not verified/).first()).toBeVisible();
  await isFitEverywhere(page, 'elsewhere-2');
});
