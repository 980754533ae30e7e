import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { awake } from './building.ts';

const contrast = ['color-contrast', 'color-contrast-enhanced'];
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

const axeOn = (page: Page): AxeBuilder =>
  new AxeBuilder({ page })
    // A page without frames needs no second page to gather what was found in them.
    .setLegacyMode()
    // The rows of a long list are alike: the first ones stand for all.
    .exclude('main li:nth-child(n + 6)')
    .exclude('main label:nth-child(n + 6)')
    // What passes is only counted: to describe each of it takes most of the time.
    .options({
      resultTypes: ['violations'],
      rules: { 'color-contrast-enhanced': { enabled: true } },
    });

async function seenBy(axe: AxeBuilder): Promise<readonly string[]> {
  const { violations } = await axe.analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}

/** Breaches of WCAG 2.2 A and AA, and of contrast at AAA, that axe can see on the page as it stands. */
export const breaches = (page: Page): Promise<readonly string[]> =>
  seenBy(axeOn(page).withTags(tags));

/** The same page on dark paper can only differ by its colours. */
export async function faintOnDark(page: Page): Promise<readonly string[]> {
  await page.emulateMedia({ colorScheme: 'dark' });
  const faint = await seenBy(axeOn(page).withRules(contrast));
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
async function picture(page: Page, name: string, language: string): Promise<void> {
  const folder = process.env['JOURNEY_PICTURES'];
  if (!folder) return;
  const path = `${folder}/${test.info().project.name}-${name}-${language}.png`;
  await page.screenshot({ path, fullPage: true });
}

/** Nothing wrong with a page on either paper and in either language: words may be longer, parts are the same. */
export async function isFitInBoth(page: Page, name: string): Promise<void> {
  await isFitOnBothPapers(page);
  await picture(page, name, 'en');
  await page.getByRole('button', { name: 'Español' }).click();
  await expect(page.locator('html')).toHaveAttribute('lang', 'es');
  expect(await overhang(page)).toBe(0);
  expect(await tooSmall(page)).toEqual([]);
  await picture(page, name, 'es');
  await page.getByRole('button', { name: 'English' }).click();
  await expect(page.locator('html')).toHaveAttribute('lang', 'en');
}
