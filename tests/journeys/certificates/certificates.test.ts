import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { isFitEverywhere } from '../fitness.ts';
import { options, signedIn, test } from './site.ts';

const fileOf = (page: Page) => page.locator('input[type=file]');

test('a certificate is carried, verified by a stranger, suspended, and seen to be', async ({
  browser,
  site,
}) => {
  test.setTimeout(360_000);
  const own = `/company/${site.company}/certificates/mine`;
  const holder = await signedIn(browser, site, site.holder);
  await holder.goto(own);
  await expect(holder.getByRole('heading', { name: 'Base of wall installer' })).toBeVisible();
  await expect(holder.getByText('Current', { exact: true })).toBeVisible();
  await isFitEverywhere(holder, 'certificate-1');

  // Asked for as the link does: what a browser does with a PDF depends on the browser.
  const paper = holder.getByRole('link', { name: 'Certificate as PDF' });
  const pdf = await holder.request.get((await paper.getAttribute('href')) ?? '');
  expect(pdf.headers()['content-type']).toBe('application/pdf');
  expect((await pdf.body()).subarray(0, 5).toString()).toBe('%PDF-');
  const taking = holder.waitForEvent('download');
  await holder.getByRole('link', { name: 'Credential file', exact: true }).click();
  const file = await (await taking).path();

  const address = await holder
    .getByRole('link', { name: 'What strangers read' })
    .getAttribute('href');
  const stranger = await (await browser.newContext(options(site))).newPage();
  const verify = () => stranger.goto(address ?? '');
  await verify();
  await expect(stranger.getByText('This certificate holds today.')).toBeVisible();
  await expect(stranger.getByText('A. M. R.')).toBeVisible();
  await expect(stranger.getByText('Ruiz')).toHaveCount(0);
  await isFitEverywhere(stranger, 'certificate-2');
  await fileOf(stranger).setInputFiles(file);
  await expect(stranger.getByText('The signature is right')).toBeVisible();
  await expect(stranger.getByText('It was signed for Ana María Ruiz.')).toBeVisible();
  const [head = '', , tail = ''] = readFileSync(file, 'utf8').split('.');
  const forged = `${head}.${Buffer.from('{}').toString('base64url')}.${tail}`;
  await fileOf(stranger).setInputFiles({
    name: 'forged.jwt',
    mimeType: 'application/jwt',
    buffer: Buffer.from(forged),
  });
  await expect(stranger.getByText('Do not trust this file')).toBeVisible();

  await holder.getByText('Name that is shown').click();
  await holder.getByText('Full name').click();
  await holder.getByRole('button', { name: 'Keep this' }).click();
  await expect(holder.getByText('Kept.')).toBeVisible();
  await verify();
  await expect(stranger.getByText('Ana María Ruiz')).toBeVisible();

  const office = await signedIn(browser, site, site.office);
  await office.goto(`/company/${site.company}/certificates?show=all`);
  await isFitEverywhere(office, 'certificate-3');
  await office.getByRole('link', { name: 'Ana María Ruiz' }).click();
  await expect(office.getByRole('heading', { level: 1 })).toHaveText('Ana María Ruiz');
  await isFitEverywhere(office, 'certificate-4');
  await office.locator('summary', { hasText: 'Suspend' }).click();
  await office.getByLabel('Reason').first().fill('Missed the yearly check.');
  await office.getByRole('button', { name: 'Suspend', exact: true }).click();
  await expect(office.getByText('Done. It counts from now on.')).toBeVisible();

  await verify();
  await expect(stranger.getByText(/This certificate is suspended since/)).toBeVisible();
  await expect(stranger.getByText('yearly check')).toHaveCount(0);
  await fileOf(stranger).setInputFiles(file);
  await expect(stranger.getByText('It was suspended or withdrawn.')).toBeVisible();

  await stranger.goto('/verify/AAAAAAAAAAAAAAAAAAAAAA');
  await expect(stranger.getByText('Not one of ours')).toBeVisible();
  await isFitEverywhere(stranger, 'certificate-5');
});
