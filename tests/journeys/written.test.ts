import { expect, test, type Page } from '@playwright/test';
import type { Question } from '#engine/written/question.ts';
import { openContent } from '#server/content.ts';
import { awake } from './building.ts';
import { isFit } from './fitness.ts';

const content = openContent();
const topic = [...content.topics.values()].find(({ id }) => id === 'safety')!;

/** Whichever question of the topic stands there, by its words; none where it was made from a method. */
async function questionShown(page: Page): Promise<Question | undefined> {
  const words = await page.getByRole('region', { name: 'Written questions' }).innerText();
  return topic.questions.find(({ ask }) => words.includes(ask.en));
}

/** By key, so that nothing that sticks to the screen lies over it. */
async function take(page: Page, role: 'radio' | 'checkbox'): Promise<void> {
  await page.getByRole('main').getByRole(role).first().focus();
  await page.keyboard.press('Space');
}

/** Answers what stands there, whatever it is, but for a fault to find. */
async function passOn(page: Page): Promise<void> {
  const main = page.getByRole('main');
  if ((await main.getByRole('radio').count()) > 0) await take(page, 'radio');
  else if ((await main.getByRole('checkbox').count()) > 0) await take(page, 'checkbox');
  else if ((await main.getByRole('textbox').count()) > 0)
    await main.getByRole('textbox').fill('1 in');
  await page.getByRole('button', { name: 'Hand in the answer' }).click();
  await page.getByRole('button', { name: 'Next question' }).click();
}

/** Goes on until a question to choose one of comes. */
async function untilChooseOne(page: Page): Promise<Extract<Question, { kind: 'choose-one' }>> {
  for (let n = 0; n < 2 * topic.questions.length; n += 1) {
    const question = await questionShown(page);
    if (question?.kind === 'choose-one') return question;
    await passOn(page);
  }
  throw new Error('None came.');
}

test('a topic is chosen and a question answered, told its reason, and kept @both', async ({
  page,
}) => {
  test.slow();
  await page.goto('/written');
  await awake(page);
  await isFit(page);
  await page.getByRole('link', { name: new RegExp(`^${topic.title.en}`) }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(topic.title.en);
  const question = await untilChooseOne(page);
  await isFit(page);
  await page.getByText(question.wrong[0]!.say.en, { exact: true }).click();
  await page.getByRole('button', { name: 'Hand in the answer' }).click();
  const verdict = page.getByRole('group', { name: 'Not right' });
  await expect(verdict).toContainText(question.wrong[0]!.because.en);
  await isFit(page);
  await page.getByRole('button', { name: 'Español' }).click();
  await expect(page.getByRole('group', { name: 'No es correcto' })).toBeVisible();
  await page.emulateMedia({ colorScheme: 'dark' });
  await isFit(page);
  await page.goto('/written');
  await expect(page.getByRole('main')).toContainText('Preguntadas hasta ahora');
});

test('a fault is found on a drawn wall, fit for all @both', async ({ page }) => {
  test.slow();
  await page.goto('/written/faults-and-rework');
  await awake(page);
  const where = page.getByRole('group', { name: 'Where? Tap the picture, or choose' });
  for (let n = 0; n < 16 && (await where.count()) === 0; n += 1) await passOn(page);
  await expect(where).toBeVisible();
  await isFit(page);
});
