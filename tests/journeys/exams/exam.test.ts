import { expect, type Page } from '@playwright/test';
import { awake } from '../building.ts';
import { isFitEverywhere } from '../fitness.ts';
import { signIn, test } from './staffed-site.ts';

const place = (page: Page) => page.getByText(/^Question \d+ of \d+$/);

/** Answers what stands there, whatever it is; an order is handed in as it lies. */
async function answer(page: Page): Promise<void> {
  const form = page.getByRole('region', { name: /^Question \d+ of/ });
  const where = form
    .getByRole('group', { name: 'Where? Tap the picture, or choose' })
    .getByRole('button');
  const choices = form.locator('input[type=radio], input[type=checkbox]');
  if ((await where.count()) > 0) {
    await where.first().click();
    for (const name of ['kind', 'card']) {
      const first = form.locator(`input[name=${name}]`).first();
      if ((await first.count()) > 0) await first.check({ force: true });
    }
  } else if ((await form.getByRole('textbox').count()) > 0) {
    await form.getByRole('textbox').fill('1 in');
  } else if ((await choices.count()) > 0) {
    await choices.first().focus();
    await page.keyboard.press('Space');
  }
  await page.getByRole('button', { name: 'Save and go on' }).click();
}

test('an application, a sitting by its code, a reload in the middle, and the result', async ({
  browser,
  site,
}) => {
  test.setTimeout(420_000);
  const options = {
    baseURL: site.address,
    viewport: test.info().project.use.viewport ?? null,
    locale: 'en-US',
    serviceWorkers: 'block' as const,
  };
  const signedIn = async (username: string): Promise<Page> => {
    const page = await (await browser.newContext(options)).newPage();
    await signIn(page, username);
    return page;
  };

  const office = await signedIn('olga.office');
  await office.goto(`/company/${site.company}/applications`);
  await office.getByLabel('Who').fill('lopez');
  await office.getByRole('button', { name: 'Look up' }).click();
  await office.getByText('Ana López').click();
  await office.getByText('Base of wall installer').click();
  await isFitEverywhere(office, 'applications-found');
  await office.getByRole('button', { name: 'Open it' }).click();
  await expect(office.getByRole('heading', { level: 1 })).toHaveText('Ana López');
  await isFitEverywhere(office, 'application');
  const application = new URL(office.url()).pathname;

  const examiner = await signedIn('ed.examiner');
  await examiner.goto(application);
  await examiner.getByRole('button', { name: 'Set up a sitting' }).first().click();
  await examiner.getByRole('button', { name: 'Make a start code' }).click();
  const code = await examiner.getByText(/^[A-Z]{3}-[A-Z]{3}$/).textContent();
  await isFitEverywhere(examiner, 'sitting-waiting');

  const ana = await signedIn('ana.lopez');
  await ana.getByRole('link', { name: /Written questions/ }).click();
  await ana.getByLabel('Start code').fill('AAA-AAA');
  await ana.getByRole('button', { name: 'Begin' }).click();
  await expect(ana.getByRole('alert')).toContainText('not the code');
  await ana.getByLabel('Start code').fill(code ?? '');
  await ana.getByRole('button', { name: 'Begin' }).click();
  await awake(ana);
  await expect(place(ana)).toHaveText('Question 1 of 30');
  await isFitEverywhere(ana, 'exam-question');
  await answer(ana);
  await expect(place(ana)).toHaveText('Question 2 of 30');

  // Without signal the answer waits on the device, and goes when there is some.
  await ana.route('**/told', (route) => route.abort());
  await answer(ana);
  await expect(ana.getByRole('button', { name: /Question 2 .*not sent yet/ })).toBeVisible();
  await expect(place(ana)).toHaveText('Question 3 of 30');
  await ana.unroute('**/told');
  await ana.reload();
  await awake(ana);
  await expect(ana.getByRole('button', { name: /Question 1 .*saved/ })).toBeVisible();
  await expect(ana.getByRole('button', { name: /Question 2 .*saved/ })).toBeVisible();
  await expect(place(ana)).toHaveText('Question 3 of 30');

  await ana.getByRole('button', { name: 'Hand in', exact: true }).click();
  await expect(ana.getByRole('dialog')).toContainText('28 questions are not answered');
  await ana.getByRole('button', { name: 'Hand in now' }).click();
  await expect(ana.getByRole('heading', { name: 'Handed in' })).toBeVisible();

  await examiner.reload();
  await expect(examiner.getByRole('main')).toContainText('2 of 30 answered.');
  await isFitEverywhere(examiner, 'sitting-handed-in');
  await examiner.getByRole('button', { name: 'Release the result' }).click();
  await expect(examiner.getByRole('button', { name: 'Release the result' })).toBeHidden();
  await ana.reload();
  await expect(ana.getByRole('heading', { name: 'Result' })).toBeVisible();
  await expect(ana.getByRole('main')).toContainText('Not passed');
  await isFitEverywhere(ana, 'exam-result');
  await office.reload();
  await expect(office.getByRole('main')).toContainText('It was not passed.');

  // The take-off of the same application: a problem a page, saved as typed, the working after release.
  const begin = async (part: RegExp) => {
    await examiner.goto(application);
    await examiner.getByRole('listitem').filter({ hasText: part }).getByRole('button').click();
    await examiner.getByRole('button', { name: 'Make a start code' }).click();
    const made = await examiner.getByText(/^[A-Z]{3}-[A-Z]{3}$/).textContent();
    await ana.goto(`/company/${site.company}`);
    await ana
      .getByRole('link', { name: part })
      .and(ana.getByRole('link', { name: /Not begun/ }))
      .click();
    await ana.getByLabel('Start code').fill(made ?? '');
    await ana.getByRole('button', { name: 'Begin' }).click();
    await awake(ana);
  };
  const handIn = async () => {
    await ana.getByRole('button', { name: 'Hand in', exact: true }).click();
    await ana.getByRole('button', { name: 'Hand in now' }).click();
    await expect(ana.getByRole('heading', { name: 'Handed in' })).toBeVisible();
    await examiner.reload();
    await examiner.getByRole('button', { name: 'Release the result' }).click();
    await expect(examiner.getByRole('button', { name: 'Release the result' })).toBeHidden();
    await ana.reload();
    await expect(ana.getByRole('heading', { name: 'Result' })).toBeVisible();
  };
  await begin(/Take-off/);
  await expect(place(ana)).toHaveText('Question 1 of 6');
  const field = ana.getByRole('textbox').first();
  if ((await ana.getByRole('textbox').count()) > 0) await field.fill(`12'-6 1/2"`);
  else await ana.getByRole('radio').first().check({ force: true });
  await isFitEverywhere(ana, 'exam-problem');
  await ana.getByRole('button', { name: 'Save and go on' }).click();
  await expect(place(ana)).toHaveText('Question 2 of 6');
  await ana.reload();
  await awake(ana);
  await ana.getByRole('button', { name: /Question 1 .*saved/ }).click();
  await expect(place(ana)).toHaveText('Question 1 of 6');
  await handIn();
  await ana
    .getByText(/parts right$/)
    .first()
    .click();
  await isFitEverywhere(ana, 'exam-problem-result');

  // A wall: every move is saved, nothing tells whether it is right, and a reload goes on with it.
  await begin(/Mock-ups/);
  await expect(place(ana)).toHaveText('Question 1 of 2');
  const cards = ana.getByRole('group', { name: 'Bench' }).getByRole('radio');
  const count = await cards.count();
  await ana.getByRole('button', { name: 'Wait 5 min' }).click();
  for (let put = 0; put < 3; put += 1) {
    await cards.nth(put).check({ force: true });
    await expect(ana.getByRole('button', { name: 'Put it up' })).toBeVisible();
    const keep = ana.getByRole('button', { name: /^Leave it at / });
    while ((await keep.count()) > 0) await keep.first().click();
    if (put === 1) await isFitEverywhere(ana, 'exam-wall');
    await ana.getByRole('button', { name: 'Put it up' }).click();
    await expect(cards).toHaveCount(count - 1 - put);
  }
  await expect(ana.getByRole('status').filter({ hasText: 'saved' })).toBeVisible();
  await ana.reload();
  await awake(ana);
  await expect(cards).toHaveCount(count - 3);
  await isFitEverywhere(ana, 'exam-wall-again');
  await handIn();
  await expect(ana.getByRole('main')).toContainText('Not passed');
  await ana.getByText(/ 100$/).first().click();
  await isFitEverywhere(ana, 'exam-wall-result');
});
