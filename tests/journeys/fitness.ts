import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page } from '@playwright/test';
import type axe from 'axe-core';
import { awake } from './building.ts';
import { sizes } from './sizes.ts';

const asked = { resultTypes: ['violations'] } satisfies axe.RunOptions;

/** Breaches of WCAG 2.2 A and AA, and of contrast at AAA. */
const everything: axe.RunOptions = {
  ...asked,
  runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
  rules: { 'color-contrast-enhanced': { enabled: true } },
};

const colours: axe.RunOptions = {
  ...asked,
  runOnly: { type: 'rule', values: ['color-contrast', 'color-contrast-enhanced'] },
};

/** The rows of a long list are alike: the first ones stand for all. */
const leftOut = ['main li:nth-child(n + 6)', 'main label:nth-child(n + 6)'];

// In its small form, and once to a page: to hand it over takes as long as to run it.
const source = readFileSync(fileURLToPath(import.meta.resolve('axe-core/axe.min.js')), 'utf8');

async function seenBy(page: Page, options: axe.RunOptions): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(source);
  return page.evaluate(
    async ([exclude, how]) => {
      const here = (window as unknown as { readonly axe: typeof axe }).axe;
      const { violations } = await here.run({ exclude }, how);
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
    },
    [leftOut, options] as const,
  );
}

/** What axe can see on the page as it stands. */
export const breaches = (page: Page): Promise<readonly string[]> => seenBy(page, everything);

/** The same page on dark paper can only differ by its colours. */
export async function faintOnDark(page: Page): Promise<readonly string[]> {
  await page.emulateMedia({ colorScheme: 'dark' });
  const faint = await seenBy(page, colours);
  await page.emulateMedia({ colorScheme: 'light' });
  return faint;
}

/** How far the page can be pushed sideways. */
export const overhang = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/**
 * The names of what can be pressed and is too small for a thumb in a glove, 48 px each way. Left out is what WCAG 2.5.8
 * excepts as well: a link within a sentence, whose lines give it its height, and the parts of a drawing, whose size is
 * what the drawing says (each stands in a list beside it too).
 */
export const tooSmall = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const pressable =
      ':is(a[href], button, summary, .button, label.card, input, select, textarea, [role=button], [tabindex="0"])';
    const least = 47.5;
    /** All that answers to the same press: a box to tick and its words. */
    const pressed = (part: HTMLElement): readonly HTMLElement[] =>
      part instanceof HTMLInputElement && ['checkbox', 'radio', 'file'].includes(part.type)
        ? [part, ...(part.labels ?? [])]
        : [part];
    const isInSentence = (part: HTMLElement): boolean => {
      if (part.localName !== 'a' || getComputedStyle(part).display !== 'inline') return false;
      const around = part.parentElement?.cloneNode(true) as HTMLElement;
      for (const link of around.querySelectorAll('a')) link.remove();
      return /\p{L}/u.test(around.textContent ?? '');
    };
    const large = ({ width, height }: DOMRect): boolean => width >= least && height >= least;
    return (
      [...document.querySelectorAll<HTMLElement>(`main ${pressable}`)]
        .filter((part) => part instanceof HTMLElement)
        // What is out of sight and out of the tab order only names what Enter does.
        .filter((part) => part.offsetParent !== null && part.tabIndex >= 0)
        .filter((part) => part.getBoundingClientRect().width > 0 && !isInSentence(part))
        .filter((part) => !pressed(part).some((each) => large(each.getBoundingClientRect())))
        .map((part) => {
          const name = part.getAttribute('aria-label') ?? part.textContent?.trim();
          return `${part.localName} ${name || part.id} ${part.offsetWidth}x${part.offsetHeight}`;
        })
    );
  });

/** Nothing wrong with a page as it stands. */
export async function isFit(page: Page): Promise<void> {
  await awake(page);
  expect(await breaches(page)).toEqual([]);
  expect(await overhang(page)).toBe(0);
  expect(await tooSmall(page)).toEqual([]);
}

/** Nothing wrong with a page on light paper, nor its colours on dark. */
export async function isFitOnBothPapers(page: Page): Promise<void> {
  await isFit(page);
  expect(await faintOnDark(page)).toEqual([]);
}

/** For whoever would rather look: a folder named by JOURNEY_PICTURES takes every page that is tested. */
async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['JOURNEY_PICTURES'];
  if (!folder) return;
  const path = `${folder}/${page.viewportSize()?.width ?? 0}-${name}.png`;
  await page.screenshot({ path, fullPage: true });
}

async function speak(page: Page, language: string, button: string): Promise<void> {
  await page.getByRole('button', { name: button }).click();
  await expect(page.locator('html')).toHaveAttribute('lang', language);
}

type Size = { readonly width: number; readonly height: number };

/** Nothing wrong with a page at some sizes, on either paper and in either language: words may be longer, parts are the same. */
async function isFitAt(page: Page, name: string, screens: readonly Size[]): Promise<void> {
  for (const screen of screens) {
    await page.setViewportSize(screen);
    await isFitOnBothPapers(page);
    await picture(page, `${name}-en`);
  }
  await speak(page, 'es', 'Español');
  for (const screen of screens.toReversed()) {
    await page.setViewportSize(screen);
    expect(await overhang(page)).toBe(0);
    expect(await tooSmall(page)).toEqual([]);
    await picture(page, `${name}-es`);
  }
  await speak(page, 'en', 'English');
}

/** ... at the size of the screen it is on. */
export const isFitInBoth = (page: Page, name: string): Promise<void> =>
  isFitAt(page, name, [page.viewportSize() ?? sizes.phone]);

/** ... on a phone and at a desk, for a journey that is made once. It is left on a phone. */
export const isFitEverywhere = (page: Page, name: string): Promise<void> =>
  isFitAt(page, name, [sizes.phone, sizes.desktop]);
