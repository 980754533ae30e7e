import type { Locator, Page } from '@playwright/test';
import { approximate } from '#engine/measure/rational.ts';
import { middleOf } from '#engine/method/rule.ts';
import { type Sequence, type SequenceStep, sequenceOf } from '#engine/method/sequence.ts';
import { siteFrom } from '#engine/method/site.ts';
import type { MethodId } from '#engine/method/method.ts';
import type { Language } from '#engine/text.ts';
import { openContent } from '#server/content.ts';
import { quantityWords } from '#ui/measure/quantity-words.ts';

const content = openContent();

export function wallOf(id: string, answers: Readonly<Record<string, string>> = {}): Sequence {
  const method = content.methods.get(id as MethodId);
  const site = method && siteFrom(method.site, answers);
  const sheet = method && content.dataSheets.get(method.dataSheet);
  const sequence = site?.ok && sheet && sequenceOf(method, sheet, site.value);
  if (!sequence || !sequence.ok) throw new Error(`No wall of ${id} is shipped.`);
  return sequence.value;
}

/** A right value for every setting, as the trade writes it. */
export const rightSettings = (step: SequenceStep, language: Language = 'en') =>
  step.asks.map(({ ask, sheetNumber, rule }) => ({
    ask: ask[language],
    value: quantityWords(sheetNumber.aim ?? middleOf(rule), language),
  }));

export const minutesToDry = ({ dries }: SequenceStep): number =>
  dries ? Math.ceil(approximate(dries.least.value) / 60) : 0;

const words = {
  en: { putUp: 'Put it up', clock: 'Clock', wait: 'Wait' },
  es: { putUp: 'Ponerla', clock: 'Reloj', wait: 'Esperar' },
};

/** Until the page hears what is pressed. */
export const awake = (page: Page): Promise<void> =>
  page.locator('html[data-awake]').waitFor({ state: 'attached' });

/** Opens a page and waits until it hears what is pressed. */
export async function open(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await awake(page);
}

/** How something is pressed: by mouse unless told otherwise. */
export type Press = (part: Locator) => Promise<void>;

export const byMouse: Press = (part) => part.click();
export const byFinger: Press = (part) => part.tap();

/** Builds by finger or mouse, as a person would. */
export class Builder {
  readonly #page: Page;
  readonly #language: Language;
  readonly #press: Press;

  constructor(page: Page, language: Language = 'en', press: Press = byMouse) {
    this.#page = page;
    this.#language = language;
    this.#press = press;
  }

  card(text: string): Locator {
    return this.#page
      .locator('label.card')
      .filter({ hasText: new RegExp(`^\\s*${escaped(text)}\\s*$`) });
  }

  /** Scrolls until the card lies clear of the tools, and presses it. */
  async choose(text: string): Promise<void> {
    await awake(this.#page);
    const card = this.card(text);
    await card.evaluate((row) => row.scrollIntoView({ block: 'start', behavior: 'instant' }));
    await this.#press(card);
  }

  async putUp(step: SequenceStep, settings = rightSettings(step, this.#language)): Promise<void> {
    await this.choose(step.say[this.#language]);
    for (const { ask, value } of settings) {
      await this.#page.getByLabel(ask, { exact: true }).fill(value);
    }
    await this.#press(this.#page.getByRole('button', { name: words[this.#language].putUp }));
  }

  /** In presses of the longest waits that fit. */
  async wait(minutes: number): Promise<void> {
    const { clock, wait } = words[this.#language];
    const opener = this.#page.getByRole('button', { name: new RegExp(`^${clock}`) });
    const isShut =
      (await opener.isVisible()) && (await opener.getAttribute('aria-expanded')) === 'false';
    if (isShut) await this.#press(opener);
    let left = minutes;
    for (const press of [24 * 60, 60, 5, 1]) {
      const time = press === 1440 ? '1 d' : press === 60 ? '1 h' : `${press} min`;
      const button = this.#page.getByRole('button', { name: new RegExp(`^${wait} ${time}`) });
      for (; left >= press && (await button.count()) > 0; left -= press) await this.#press(button);
    }
  }

  async build(steps: readonly SequenceStep[]): Promise<void> {
    for (const step of steps) {
      await this.putUp(step);
      const minutes = minutesToDry(step);
      if (minutes > 0) await this.wait(minutes);
    }
  }
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
