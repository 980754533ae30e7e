import { readFile } from 'node:fs/promises';
import { expect, test, type Page } from '@playwright/test';
import type { FamilyId } from '#engine/takeoff/family.ts';
import { instanceOf, type Instance } from '#engine/takeoff/instance.ts';
import { writeAnswer } from '#engine/takeoff/problem.ts';
import { takeoffOf } from '#engine/takeoff/takeoff.ts';
import { openContent } from '#server/content.ts';
import { awake, open } from './building.ts';
import { printedText } from './printed-text.ts';
import { breaches, faintOnDark, overhang, tooSmall } from './fitness.ts';

const content = openContent();

function problem(id: string, seed: string): Instance {
  const family = content.takeoffs.get(id as FamilyId);
  const sheet = family && content.dataSheets.get(family.dataSheet);
  const takeoff = family && sheet && takeoffOf(family, sheet);
  const instance = takeoff?.ok ? instanceOf(takeoff.value, seed) : undefined;
  if (!instance?.ok) throw new Error(`No problem ${seed} of ${id} is shipped.`);
  return instance.value;
}

const right = ({ parts }: Instance, place: number): string => {
  const { part, right } = parts[place]!;
  return writeAnswer(part.answer, right, 'en');
};

const field = (page: Page) => page.getByRole('textbox', { name: /^(Your answer|Su respuesta)$/ });
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).click();
const isPhone = (page: Page): boolean => (page.viewportSize()?.width ?? 0) < 700;

/** By the keys of the pad, as a thumb would. */
async function tap(page: Page, keys: readonly string[]) {
  const pad = page.getByRole('group', { name: 'Keys' });
  for (const key of keys) await pad.getByRole('button', { name: key, exact: true }).tap();
}

for (const address of [
  '/takeoff',
  '/takeoff/sheet-girth?seed=12',
  '/takeoff/whole-wall?seed=5&form=choice',
  '/takeoff/time-on-the-wall?seed=3',
  '/takeoff/job',
  '/takeoff/worksheet',
  '/takeoff/history',
]) {
  test(`${address} is fit for all on both papers and never runs sideways @both`, async ({
    page,
  }) => {
    test.slow();
    await open(page, address);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    expect(await overhang(page)).toBe(0);
    expect(await breaches(page)).toEqual([]);
    expect(await tooSmall(page)).toEqual([]);
    expect(await faintOnDark(page)).toEqual([]);
    await press(page, 'Español');
    await expect(page.locator('html')).toHaveAttribute('lang', 'es');
    expect(await overhang(page)).toBe(0);
  });
}

test('a problem is answered as the trade writes, on the keys of a phone or by keyboard @both', async ({
  page,
}) => {
  const instance = problem('fasteners-one-bar', '12');
  await open(page, '/takeoff/fasteners-one-bar?seed=12');
  const fasteners = right(instance, 0).split(' ')[0]!;
  const spaces = String(Number(fasteners) - 1);
  if (isPhone(page)) {
    await tap(page, [...spaces]);
    await expect(field(page)).toHaveValue(spaces);
    await expect(field(page)).toHaveAttribute('inputmode', 'none');
    await press(page, 'Check');
  } else {
    await expect(page.getByRole('group', { name: 'Keys' })).toBeHidden();
    await field(page).focus();
    await page.keyboard.type(spaces);
    await page.keyboard.press('Enter');
  }
  const slip = page.getByRole('group', { name: 'A known slip' });
  await expect(slip).toContainText('You counted the spaces');
  await expect(slip).toBeFocused();

  await field(page).fill(fasteners);
  await press(page, 'Check again');
  await expect(page.getByRole('group', { name: 'Right' })).toBeFocused();
  await press(page, 'Next part');
  await expect(field(page)).toBeFocused();

  const [, whole = '', fraction = ''] = /^(\d+)?(?: ?(\d+\/\d+))?"$/.exec(right(instance, 1)) ?? [];
  if (isPhone(page)) {
    const eighths = ['1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8', '1/16'];
    await tap(page, [...whole]);
    if (fraction !== '' && !eighths.includes(fraction)) await tap(page, ['16ths']);
    if (fraction !== '') await tap(page, [fraction]);
    await tap(page, ['in']);
  } else await page.keyboard.type(right(instance, 1));
  await expect(page.getByText('Read as')).toContainText(right(instance, 1));
  await press(page, 'Check');
  await expect(page.getByText('1 of 2 right at the first try')).toBeVisible();

  await press(page, 'Next problem');
  await expect(page).toHaveURL(/\/takeoff\/fasteners-one-bar\?seed=(?!12$)\d+$/);
  await expect(field(page)).toHaveValue('');

  await open(page, '/takeoff/history');
  await expect(page.getByRole('main').getByRole('listitem').first()).toContainText(
    `${spaces} A known slip · 2 tries`,
  );
  await open(page, '/takeoff');
  const row = page.getByRole('checkbox', { name: /Fasteners in one bar/ }).locator('xpath=..');
  await expect(row).toContainText('1 of the last 2 right');
});

test('what was left half done is there after the page was closed', async ({ page }) => {
  await open(page, '/takeoff/fasteners-one-bar?seed=12');
  await field(page).fill('999');
  await press(page, 'Check');
  await press(page, 'Go on with my answer');
  await expect(page.getByRole('heading', { name: /how far apart/ })).toBeVisible();
  await field(page).fill('1 in');
  await press(page, 'Check');
  await page.reload();
  await awake(page);
  await expect(page.getByText('Your answer: 999 fasteners')).toBeVisible();
  await expect(field(page)).toHaveValue('1 in');
});

test('practice is picked among all by what is missed, and answered from a list', async ({
  page,
}) => {
  await open(page, '/takeoff');
  await page.getByRole('radio', { name: /Picked from a list/ }).check();
  await press(page, 'Pick by what I miss');
  await expect(page).toHaveURL(/\/takeoff\/[\w-]+\?seed=\d+&form=choice&among=all$/);
  const family = () => new URL(page.url()).pathname.split('/').at(-1);
  const first = family();
  for (let part = 0; part < 20; part += 1) {
    await press(page, 'Show the working');
    const next = page.getByRole('button', { name: 'Next part' });
    if (!(await next.isVisible())) break;
    await next.click();
  }
  await press(page, 'Next problem');
  await expect(page).not.toHaveURL(new RegExp(`/takeoff/${first}\\?`));
  await expect(page).toHaveURL(/among=all$/);
});

test('a real job gives its list, keeps its entries and goes into a table @both', async ({
  page,
}) => {
  await open(page, '/takeoff/job');
  const enter = (name: string, text: string) =>
    page.getByRole('textbox', { name, exact: true }).fill(text);
  await press(page, 'Work it out');
  await expect(page.getByRole('textbox', { name: 'Run of the wall' })).toBeFocused();
  await enter('Name of the job', 'North gable');
  await enter('Run of the wall', `128'6`);
  await enter('Inside corners', '1');
  await enter('Outside corners', '2');
  await enter('End dams', '2');
  await enter('Turn-up', '7');
  await enter('Depth of the shelf', '4');
  await enter('Studs apart', '16');
  for (const choice of ['held back', 'steel studs', 'open head joints']) {
    await page.getByRole('radio', { name: choice }).check();
  }
  const turnUp = page.getByRole('textbox', { name: 'Turn-up', exact: true });
  await expect(turnUp).toHaveAccessibleDescription(/asks for a turn-up of 8" or more/);
  await turnUp.fill('8 1/2');
  const list = page.getByRole('region', { name: 'A whole wall' });
  await expect(list).toContainText('208 fasteners');
  await expect(list).toContainText('12 cartridges');
  expect(await breaches(page)).toEqual([]);
  expect(await overhang(page)).toBe(0);

  await page.reload();
  await awake(page);
  await expect(list).toContainText('208 fasteners');
  if (!isPhone(page)) {
    const printed = printedText(await page.pdf({ preferCSSPageSize: true }));
    for (const words of [
      'North gable',
      '128\'-6"',
      'A whole wall',
      '208 fasteners',
      '12 cartridges',
    ]) {
      expect(printed).toContain(words);
    }
    expect(printed).not.toContain('Work it out');
  }
  const coming = page.waitForEvent('download');
  await press(page, /CSV/);
  const file = await coming;
  expect(file.suggestedFilename()).toBe('North-gable.csv');
  const text = await readFile(await file.path(), 'utf8');
  expect(text).toContain(`Entered,A whole wall,Run of the wall,"128'-6""",,\r\n`);
  expect(text).toMatch(/Needed,A whole wall,Fasteners in the bar,208 fasteners,/);

  await page.getByText(/What is taken off/).click();
  await page.getByRole('checkbox', { name: /Weeps in a wall/ }).check();
  await expect(page).toHaveURL(
    /families=weeps-in-wall,whole-wall|families=whole-wall,weeps-in-wall/,
  );
  await expect(page.getByRole('textbox', { name: 'Run of the wall' })).toHaveValue(`128'6`);
});

test('a worksheet is a PDF, the same for the same number', async ({ page, request }) => {
  await open(page, '/takeoff/worksheet');
  await press(page, 'Make the PDF');
  await expect(page.getByText('Choose one kind of problem or more.')).toBeVisible();
  await page.getByRole('checkbox', { name: /Seam tape/ }).check();
  await page.getByRole('textbox', { name: 'Number of the sheet' }).fill('77');
  await page.getByRole('textbox', { name: 'How many problems' }).fill('3');
  const coming = page
    .context()
    .waitForEvent('request', (asked) => asked.url().includes('/takeoff/worksheet.pdf'));
  await press(page, 'Make the PDF');
  const address = (await coming).url();
  expect(address).toContain('?count=3&seed=77&lang=en&families=seam-tape');
  const [one, other] = await Promise.all([request.get(address), request.get(address)]);
  expect(one.headers()['content-type']).toBe('application/pdf');
  const bytes = await one.body();
  expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
  expect(bytes.equals(await other.body())).toBe(true);
  const refused = await request.get('/takeoff/worksheet.pdf?families=seam-tap');
  expect(refused.status()).toBe(400);
  expect(await refused.text()).toContain('try seam-tape');
});

test('an address that asks for what is not there says so, and shows a problem all the same', async ({
  page,
}) => {
  await open(page, '/takeoff/seam-tape?seed=seven');
  await expect(page.getByRole('alert')).toContainText('seed=seven');
  await expect(page.getByRole('heading', { level: 1, name: 'Seam tape' })).toBeVisible();
  const response = await page.goto('/takeoff/no-such-problem?seed=1');
  expect(response?.status()).toBe(404);
});
