import { expect, test, type Page } from '@playwright/test';
import { open } from './building.ts';
import { breaches, overhang } from './fitness.ts';

/** Anything of the sheet that is pressed, and is lower than a glove needs. */
const tooLow = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main :is(button, .button, input[type=range])')]
      .filter((one) => one.offsetParent !== null && one.offsetHeight < 48)
      .map((one) => `${one.textContent.trim()} ${one.offsetHeight}`),
  );

/** A wall with nothing on it but the first cards, kept in the browser as the program keeps it. */
const kept = {
  id: 'leaky',
  finished: '2030-05-01T07:30:00.000Z',
  mode: 'own',
  seed: '3',
  help: [],
  revision: 'of-old',
  score: 10,
  outcome: 'tear-out',
  attempt: {
    method: 'base-of-wall',
    site: {},
    steps: ['clean-substrate', 'prime-wall', 'snap-line', 'hang-sheet'].map((step) => ({ step })),
  },
};

async function openReview(page: Page): Promise<void> {
  await page.addInitScript(
    (attempt) => localStorage.setItem(`attempt/${attempt.id}`, JSON.stringify(attempt)),
    kept,
  );
  await page.goto('/attempts/leaky');
  await expect(page.getByRole('heading', { name: 'Water test' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Replay' })).toBeVisible();
}

test.describe('find the fault', () => {
  test('a place is tapped on the picture, the fault named, noted and marked @both', async ({
    page,
  }) => {
    await page.goto('/practise');
    await page.getByRole('link', { name: 'Find the fault' }).click();
    await page.getByRole('link', { name: /^Base of wall/ }).click();
    await expect(page).toHaveURL(/\/find\/base-of-wall\?seed=\d+$/);
    const picture = page.getByRole('img', { name: /^Section/ });
    await expect(picture).toBeVisible();
    const box = (await picture.boundingBox())!;
    const spot = { x: box.width * 0.45, y: box.height * 0.6 };
    await expect(async () => {
      await picture.click({ position: spot });
      await expect(page.getByRole('group', { name: /^What is wrong at/ })).toBeVisible({
        timeout: 1000,
      });
    }).toPass();
    await page.getByRole('radio', { name: 'Left out' }).check();
    const which = page.getByRole('group', { name: 'What is missing?' }).getByRole('radio');
    await which.first().check();
    await page.getByRole('button', { name: 'Note it' }).click();
    await expect(page.getByRole('heading', { name: 'Noted: 1 fault' })).toBeVisible();
    expect(await overhang(page)).toBe(0);
    expect(await tooLow(page)).toEqual([]);
    expect(await breaches(page)).toEqual([]);

    await page.getByRole('button', { name: 'Hand it in: 1 fault' }).click();
    await expect(page.getByRole('heading', { name: /^\d of \d found$/ })).toBeFocused();
    expect(await breaches(page)).toEqual([]);
    const address = page.url();
    await page.getByRole('link', { name: 'Next wall' }).click();
    await expect(page.getByRole('heading', { name: 'Noted: 0 faults' })).toBeVisible();
    expect(page.url()).not.toBe(address);
    await page.goto('/find');
    await expect(page.getByRole('heading', { name: 'Walls you looked over' })).toBeVisible();
  });

  test('the keyboard alone is enough @desktop', async ({ page }) => {
    await open(page, '/find/window-sill?seed=5');
    const places = page.getByRole('group', { name: /^Where\?/ }).getByRole('button');
    await places.first().focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    while (!(await page.evaluate(() => document.activeElement?.matches('input[name=kind]')))) {
      await page.keyboard.press('Tab');
    }
    await page.keyboard.press('Space');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect(page.getByRole('heading', { name: 'Noted: 1 fault' })).toBeVisible();
  });

  test('the same address is the same wall, and one without a seed gets one', async ({ page }) => {
    const log = async () => page.getByRole('table').innerText();
    await page.goto('/find/shelf-angle?seed=12');
    const first = await log();
    await page.reload();
    expect(await log()).toBe(first);
    await page.goto('/find/shelf-angle?seed=straw');
    await expect(page).toHaveURL(/seed=\d+$/);
    expect((await page.goto('/find/straw-bale?seed=1'))?.status()).toBe(404);
    await expect(
      page
        .getByRole('alert')
        .or(page.getByRole('heading', { level: 2 }))
        .first(),
    ).toBeVisible();
  });
});

test.describe('the review', () => {
  test('one way of the water after the other, to a wall repaired until it is dry @both', async ({
    page,
  }) => {
    await openReview(page);
    const water = page.getByRole('region', { name: 'Water test' });
    await expect(water.getByRole('heading', { name: /^Way 1 of / })).toBeVisible();
    await water.getByRole('button', { name: 'Next', exact: true }).click();
    await expect(water.getByRole('heading', { name: /^Way 2 of / })).toBeVisible();
    await expect(page.getByRole('button', { name: 'Way 2', pressed: true }).first()).toBeVisible();
    expect(await overhang(page)).toBe(0);
    expect(await tooLow(page)).toEqual([]);
    expect(await breaches(page)).toEqual([]);
    await water.getByRole('button', { name: /^Mark the smallest set/ }).click();
    await expect(water.getByText('Repair these: dry.')).toBeVisible();
  });

  test('the replay slides by arrow keys', async ({ page }) => {
    await openReview(page);
    const slider = page.getByRole('slider', { name: 'Place in the work' });
    const start = Number(await slider.inputValue());
    await slider.focus();
    await page.keyboard.press('ArrowRight');
    await expect(slider).toHaveValue(String(start + 1));
    await page.keyboard.press('Home');
    await expect(slider).toHaveValue('0');
    await expect(slider).toHaveAttribute('aria-valuetext', /Nothing up yet/);
  });

  test('without motion the water stands still, with arrows', async ({ page }) => {
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await openReview(page);
    const water = page.getByRole('region', { name: 'Water test' });
    expect(await water.locator('.arrow').count()).toBeGreaterThan(0);
    const names = await water
      .locator('.run *')
      .evaluateAll((parts) => parts.map((part) => getComputedStyle(part).animationName));
    expect(new Set(names)).toEqual(new Set(['none']));
  });
});
