/** What is done on a screen before its picture is taken, by what any language has alike where that can be. */
import type { Locator, Page } from '@playwright/test';
import type { Language } from '#engine/text.ts';
import { m } from '#ui/messages/generated/messages.js';
import { Builder, wallOf } from '../../journeys/building.ts';
import type { Known } from './screen.ts';

const { steps } = wallOf('base-of-wall', { corner: 'inside' });
// The strap and the primer left out, so that there is something to review.
const played = steps.filter(({ id }) => !['fasten-strap', 'prime-wall'].includes(id));
const half = 10;

export const buildHalf = (page: Page, language: Language): Promise<void> =>
  new Builder(page, language).build(played.slice(0, half));

export async function buildToReview(page: Page, language: Language): Promise<void> {
  // What was put up for the picture before stands there still.
  const builder = new Builder(page, language);
  for (const step of played) {
    if ((await builder.card(step.say[language]).count()) > 0) await builder.build([step]);
  }
  const name = m.mockup_finish({}, { locale: language });
  await page.getByRole('button', { name }).click();
  await page.getByRole('dialog').getByRole('button', { name }).click();
  await page.getByRole('heading', { level: 2 }).first().waitFor();
}

/** The first that this browser keeps. */
export async function openAttempt(page: Page): Promise<void> {
  await page.locator('main a[href^="/attempts/"]').first().click();
  await page.waitForURL(/\/attempts\/./);
  await page.getByRole('heading', { level: 2 }).first().waitFor();
}

const primary = (page: Page): Locator => page.locator('main .button.primary');

/** One of each group of choices, by key, so that nothing that sticks to the screen lies over it. */
async function chooseFirst(page: Page, within: Locator): Promise<void> {
  const first = within.locator('input[type=radio], input[type=checkbox]').first();
  if ((await first.count()) === 0) return;
  await first.focus();
  await page.keyboard.press('Space');
}

export async function noteFault(page: Page): Promise<void> {
  const form = page.locator('main .form');
  await form.locator('.zones button').first().click();
  await chooseFirst(page, form.locator('fieldset').first());
  await chooseFirst(page, form.locator('fieldset').nth(1));
}

export async function markFaults(page: Page): Promise<void> {
  await noteFault(page);
  await page.locator('main .form button.note').click();
  await primary(page).click();
  await page.locator('#faults-title').waitFor();
}

/** A number that can be read, and is wrong. */
export async function solveProblem(page: Page): Promise<void> {
  await page.locator('main form input[type=text]').first().fill('7');
  await primary(page).click();
  await page.locator('main [role=status], main [role=group]').first().waitFor();
}

export async function answerOne(page: Page): Promise<void> {
  const main = page.getByRole('main');
  const text = main.locator('input[type=text]');
  if ((await text.count()) > 0) await text.first().fill('1 in');
  else await chooseFirst(page, main);
  await primary(page).click();
  await page.locator('#written-verdict').waitFor();
}

/** To the end of a run; the first was answered for the picture before, and is kept. */
export async function answerAll(page: Page): Promise<void> {
  const verdict = page.locator('#written-verdict');
  const result = page.locator('main p.dimension');
  while ((await result.count()) === 0) {
    if ((await verdict.count()) === 0) await answerOne(page);
    await primary(page).click();
  }
}

/** Pastes a credential of the company where a file of one is checked. */
export async function checkCredential(page: Page, _: Language, known: Known): Promise<void> {
  const { company, certificate } = known;
  const file = `/company/${company}/certificates/${certificate}/credential.jwt`;
  const text = await (await page.request.get(new URL(file, page.url()).href)).text();
  // Only what a company has signed with has a key to be fetched, and that may have been now.
  await page.reload({ waitUntil: 'networkidle' });
  await page.locator('main textarea').fill(text);
  await page.locator('main form button').click();
  await page.locator('main .verdict, main [role=group]').first().waitFor();
}

/** A card chosen on a wall of an examination, with what it asks for. */
export async function chooseCard(page: Page): Promise<void> {
  const cards = page.locator('main label.card');
  await cards.nth(2).scrollIntoViewIfNeeded();
  await cards.nth(2).click();
}

const openFold =
  (which: number) =>
  (page: Page): Promise<void> =>
    page.locator('main .sheet details > summary').nth(which).click();

export const openFirst = openFold(0);
export const openFourth = openFold(3);
