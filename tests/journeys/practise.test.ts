import { readFile } from 'node:fs/promises';
import { expect, test, type Locator, type Page } from '@playwright/test';
import {
  awake,
  Builder,
  byFinger,
  byMouse,
  minutesToDry,
  type Press,
  rightSettings,
  wallOf,
} from './building.ts';
import { isFitOnBothPapers } from './fitness.ts';

const review = (page: Page) => page.getByRole('region', { name: /^(Inspection|Inspección)$/ });

const finish = async (page: Page, press: Press = byMouse) => {
  await awake(page);
  await press(page.getByRole('button', { name: 'Have it inspected' }).first());
  const dialog = page.getByRole('dialog');
  await expect(dialog.or(review(page)).first()).toBeVisible();
  if (await dialog.isVisible()) {
    await press(dialog.getByRole('button', { name: 'Have it inspected' }));
  }
  await expect(review(page)).toBeVisible();
};

test('a wall is chosen, built right with guidance, inspected and kept @both', async ({
  page,
  hasTouch,
}) => {
  test.slow();
  // On a phone by taps alone: no mouse comes before the review.
  const press = hasTouch ? byFinger : byMouse;
  await page.goto('/practise');
  await awake(page);
  await press(page.getByRole('radio', { name: 'Shelf angle or lintel' }));
  await press(page.getByRole('radio', { name: 'Concrete masonry' }));
  await press(page.getByRole('button', { name: 'Start this wall' }));
  await expect(page).toHaveURL(/\/practise\/shelf-angle\?.*backing=concrete-masonry.*/);

  const { steps } = wallOf('shelf-angle', { backing: 'concrete-masonry' });
  const builder = new Builder(page, 'en', press);
  await builder.build(steps);
  await expect(page.getByText('Every step stands.').first()).toBeVisible();
  await finish(page, press);
  await expect(review(page)).toContainText('100 of 100');
  await expect(review(page)).toContainText('Accept');

  await page.reload();
  await expect(review(page)).toContainText('100 of 100');

  await page.getByRole('link', { name: 'Your attempts' }).click();
  await page.getByRole('link', { name: /100 Shelf angle or lintel Accept/ }).click();
  await expect(page).toHaveURL(/\/attempts\/[\w-]+$/);
  await expect(review(page)).toContainText('100 of 100');
});

test('guided, what cannot come yet is refused with its reason, and a hint names its price', async ({
  page,
}) => {
  await page.goto('/practise/base-of-wall?mode=guided&seed=3');
  const { steps, constraints, strays } = wallOf('base-of-wall');
  const builder = new Builder(page);
  const late = steps.findIndex(({ id }) => id === 'prime-wall');
  await builder.putUp(steps[late]!);
  const said = (words: string) => page.getByRole('status').filter({ hasText: words });
  const reason = constraints.find(({ after }) => after === late)!.because.en;
  const status = said('Not yet. Something has to come first.');
  await expect(status).toContainText(reason);
  await expect(status).toContainText('costs 1');

  const decoy = strays.find((stray) => stray.kind === 'decoy')!;
  await builder.choose(decoy.decoy.say.en);
  await page.getByRole('button', { name: 'Put it up' }).click();
  await expect(said(decoy.decoy.because.en)).toContainText('costs 1');

  const opener = page.getByRole('button', { name: 'Hint', exact: true });
  if (await opener.isVisible()) await opener.click();
  await page.getByRole('button', { name: 'Why it is done costs 0.5' }).click();
  await page.getByRole('button', { name: 'How it is done costs 1' }).click();
  await page.getByRole('button', { name: 'Which step it is costs 2' }).click();
  await expect(page.getByRole('region', { name: /^Hint/ })).toContainText(steps[0]!.say.en);
});

test('on the clock: wet, tacky, dry, and too early is refused', async ({ page }) => {
  await page.goto('/practise/base-of-wall?mode=guided&seed=3');
  const { steps } = wallOf('base-of-wall');
  const builder = new Builder(page);
  const drying = steps.findIndex(({ dries }) => dries);
  for (const step of steps.slice(0, drying + 1)) await builder.putUp(step);
  const covering = steps.find(({ id }) => id === 'tape-top-edge')!;
  await builder.putUp(covering);
  const wet = page.getByRole('status').filter({ hasText: 'Still wet. Touch it, or wait.' });
  await expect(wet).toHaveCount(1);

  const feel = async () => {
    await page.getByRole('button', { name: 'Touch it' }).click();
    return page.getByRole('region', { name: 'Clock' }).getByRole('definition').first().innerText();
  };
  await builder.wait(0);
  expect((await feel()).toLowerCase()).toBe('wet');
  const least = minutesToDry(steps[drying]!);
  await builder.wait(Math.ceil(least / 2));
  expect((await feel()).toLowerCase()).toBe('tacky');
  await builder.wait(least);
  expect((await feel()).toLowerCase()).toBe('dry');
});

test('on your own, mistakes are taken, found, and the part missed is practised', async ({
  page,
}) => {
  test.slow();
  await page.goto('/practise/base-of-wall?mode=own&seed=3');
  const { steps } = wallOf('base-of-wall');
  const builder = new Builder(page);
  const bad = ['press-toe', 'lay-mastic'];
  const order = [...steps].sort((a, b) => {
    const swapped = bad.includes(a.id) && bad.includes(b.id);
    return swapped ? bad.indexOf(a.id) - bad.indexOf(b.id) : 0;
  });
  for (const step of order) {
    const settings = rightSettings(step);
    if (step.id === 'snap-line') settings[0]!.value = '6 in';
    await builder.putUp(step, settings);
    if (minutesToDry(step) > 0) await builder.wait(minutesToDry(step));
  }
  await finish(page);
  const items = page.getByRole('region', { name: /^Punch list/ });
  await expect(items).toContainText('Out of tolerance');
  await expect(items).toContainText('Set to 6 in. The data sheet asks for 8 in or more.');
  await expect(items).toContainText('1 place too early.');
  await expect(page.getByRole('region', { name: 'How the score adds up' })).toBeVisible();

  await page.getByRole('link', { name: 'Practise the part you missed' }).click();
  await expect(page).toHaveURL(/part=/);
  await expect(page.getByText('Mock-up, one stretch')).toBeVisible();
  const cards = page.locator('label.card');
  expect(await cards.count()).toBeLessThan(steps.length);
  expect(await cards.count()).toBeGreaterThan(1);
});

test('any wall keeps its address: loaded again it is the same wall', async ({ page }) => {
  await page.goto('/practise');
  await awake(page);
  const link = page.getByRole('link', { name: 'Any wall' });
  const address = (await link.getAttribute('href')) ?? '';
  expect(address).toMatch(/^\/practise\/[\w-]+\?.*seed=\d+/);
  await link.click();
  await expect.poll(() => page.url()).toContain(address);
  // Its title, its cards as they lie, and every line of its picture.
  const shown = async () => [
    await page.getByRole('main').getByRole('heading', { level: 1 }).innerText(),
    ...(await page.locator('label.card').allInnerTexts()),
    ...(await page
      .locator('main svg path[data-part]')
      .evaluateAll((lines) => lines.map((line) => line.getAttribute('d')))),
  ];
  await expect(page.locator('label.card').first()).toBeVisible();
  const before = await shown();
  // A phone draws the picture only when it is looked at: there it is the title and the cards.
  expect(before.length).toBeGreaterThan(15);
  await page.reload();
  await awake(page);
  expect(page.url()).toContain(address);
  expect(await shown()).toEqual(before);
});

/** Tab after Tab, as somebody without a mouse goes there. */
async function tabTo(page: Page, part: Locator) {
  for (let presses = 0; presses < 80; presses += 1) {
    await page.keyboard.press('Tab');
    if (await part.evaluate((each) => each === document.activeElement)) return;
  }
  throw new Error(`Tab never comes to ${String(part)}.`);
}

test('by keyboard alone from choosing a wall to the inspection @desktop', async ({ page }) => {
  await page.goto('/practise');
  await awake(page);
  await tabTo(page, page.getByRole('radio', { name: 'Base of wall' }));
  await page.keyboard.press('ArrowDown');
  await expect(page.getByRole('radio', { name: 'Shelf angle or lintel' })).toBeChecked();
  await tabTo(page, page.getByRole('radio', { name: /^With guidance|^Guided/ }));
  await page.keyboard.press('ArrowDown');
  await tabTo(page, page.getByRole('button', { name: 'Start this wall' }));
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/\/practise\/shelf-angle\?.*mode=own/);

  const step = wallOf('shelf-angle').steps[0]!;
  const find = page.getByRole('searchbox', { name: 'Find a card' });
  await awake(page);
  await tabTo(page, find);
  await page.keyboard.type(step.say.en);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  await page.keyboard.press('Enter');
  const wall = page.getByRole('region', { name: 'On the wall' });
  await expect(wall.getByRole('listitem').filter({ hasText: step.say.en })).toBeVisible();

  await tabTo(page, page.getByRole('button', { name: 'Have it inspected' }).first());
  await page.keyboard.press('Enter');
  const sure = page.getByRole('dialog').getByRole('button', { name: 'Have it inspected' });
  await expect(sure).toBeVisible();
  if (!(await sure.evaluate((each) => each === document.activeElement))) await tabTo(page, sure);
  await page.keyboard.press('Enter');
  await expect(review(page)).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Inspection' })).toBeFocused();
});

test('by keyboard alone: arrows choose, Enter puts up, Ctrl+Z takes down @desktop', async ({
  page,
}) => {
  await page.goto('/practise/base-of-wall?mode=own&seed=3');
  const find = page.getByRole('searchbox', { name: 'Find a card' });
  await find.focus();
  await page.keyboard.press('Tab');
  const first = page.getByRole('radio').first();
  await expect(first).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowUp');
  await expect(first).toBeChecked();

  const wall = page.getByRole('region', { name: 'On the wall' });
  const plain = wallOf('base-of-wall').steps[0]!;
  await find.fill(plain.say.en);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  await page.keyboard.press('Enter');
  await expect(wall.getByRole('listitem').filter({ hasText: plain.say.en })).toBeVisible();

  const asking = wallOf('base-of-wall').steps.find(({ id }) => id === 'snap-line')!;
  await find.fill(asking.say.en);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  await page.keyboard.press('Enter');
  const height = page.getByLabel(asking.asks[0]!.ask.en, { exact: true });
  await expect(height).toBeFocused();
  await page.keyboard.type('8 1/2');
  await page.keyboard.press('Enter');
  await expect(wall.getByRole('listitem').filter({ hasText: asking.say.en })).toBeVisible();

  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Undo' }).focus();
  await page.keyboard.press('Control+z');
  await page.keyboard.press('u');
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
});

test('who leaves and comes back goes on; another seed is another bench', async ({ page }) => {
  await page.goto('/practise/base-of-wall?mode=own&seed=3');
  const builder = new Builder(page);
  const { steps } = wallOf('base-of-wall');
  await builder.build(steps.slice(0, 3));
  const bench = () => page.locator('label.card').allInnerTexts();
  const left = await bench();
  await page.goto('/practise');
  const open = page.getByRole('region', { name: 'Left standing' });
  await expect(open).toContainText('3 cards up');
  await open.getByRole('link').first().click();
  await expect(page.getByText('You go on where you left off.')).toBeVisible();
  expect(await bench()).toEqual(left);

  await page.goto('/practise/base-of-wall?mode=own&seed=4');
  const other = await bench();
  expect(other.length).toBe(left.length + 3);
  expect(other.filter((text) => left.includes(text))).not.toEqual(left);
});

test('a wrong address says what was wrong and mends itself', async ({ page }) => {
  await page.goto('/practise/base-of-wall?backing=steel-stuf&seed=3');
  await expect(page.getByRole('alert')).toContainText('there is no “steel-stuf”');
  await expect(page.getByRole('alert')).toContainText('Nearest: steel-stud');
  await page.getByRole('link', { name: 'Open the nearest wall' }).click();
  await expect(page.getByRole('heading', { name: 'Bench' })).toBeVisible();

  const missing = await page.goto('/practise/base-of-wal');
  expect(missing?.status()).toBe(404);
  await expect(page.getByRole('alert')).toContainText('There is no method “base-of-wal”');
  await page.getByRole('link', { name: 'Base of wall' }).click();
  await expect(page).toHaveURL(/\/practise\/base-of-wall\?seed=\d+$/);
});

test('attempts are carried to another browser; a bad file loses nothing', async ({
  page,
  browser,
}) => {
  await page.goto('/practise/base-of-wall?mode=own&seed=3');
  await finish(page);
  await expect(review(page)).toContainText('0 of 100');
  await page.goto('/attempts');
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file' }).click();
  const path = await (await saved).path();

  const elsewhere = await (await browser.newContext({ locale: 'en-US' })).newPage();
  await elsewhere.goto('/attempts');
  await expect(elsewhere.getByText('No attempts yet')).toBeVisible();
  const picker = elsewhere.getByLabel('Add from a file');
  await picker.setInputFiles(path);
  await expect(elsewhere.getByText('1 attempt added.')).toBeVisible();

  const broken = (await readFile(path, 'utf8'))
    .replace('"own"', '"race"')
    .replace(/"id": "/, '$&x');
  await picker.setInputFiles({
    name: 'broken.json',
    mimeType: 'application/json',
    buffer: Buffer.from(broken),
  });
  await expect(elsewhere.getByRole('alert')).toContainText('attempts[0].mode');
  await expect(elsewhere.getByRole('link', { name: /Base of wall/ })).toHaveCount(1);
  await elsewhere.context().close();
});

test('choosing and building is fit for all on both papers @both', async ({ page }) => {
  test.slow();
  await page.goto('/practise');
  await isFitOnBothPapers(page);
  await page.goto('/practise/base-of-wall?mode=guided&seed=3&joint=seam');
  const { steps } = wallOf('base-of-wall', { joint: 'seam' });
  const builder = new Builder(page);
  const line = steps.find(({ id }) => id === 'snap-line')!;
  await builder.putUp(line);
  await isFitOnBothPapers(page);
  await page.goto('/practise/base-of-wall?weather=snow&seed=3');
  await isFitOnBothPapers(page);
});

test('a review in Spanish is fit for all on both papers @both', async ({ page }) => {
  test.slow();
  await page.goto('/practise/base-of-wall?mode=own&seed=3&joint=seam');
  const { steps } = wallOf('base-of-wall', { joint: 'seam' });
  const builder = new Builder(page);
  for (const step of steps.slice(0, 5).reverse()) await builder.putUp(step);
  await page.getByRole('button', { name: 'Español' }).click();
  const ask = page.getByRole('button', { name: 'Pedir la inspección' });
  await ask.first().click();
  await page.getByRole('dialog').getByRole('button', { name: 'Pedir la inspección' }).click();
  await expect(review(page)).toBeVisible();
  await isFitOnBothPapers(page);
  await page.goto('/attempts');
  await expect(page.getByRole('link', { name: /Base del muro/ })).toBeVisible();
  await isFitOnBothPapers(page);
});
