import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { limitsOf, isSettable, nudged } from '#engine/method/offered.ts';
import type { Ask } from '#engine/method/sequence.ts';
import type { Language, Text } from '#engine/text.ts';
import { quantityWords } from '#ui/measure/quantity-words.ts';
import { quantityText } from './move.ts';

/** As much of a setting as making it takes. */
export type AskToSet = Pick<Ask, 'id' | 'ask'> & {
  readonly sheetNumber: Pick<Ask['sheetNumber'], 'dimension' | 'entry'>;
};

/** What was typed cannot be read, and how to mend it; or it can, and cannot be set here. */
export type EntryFault = Text | 'not-offered';

/**
 * One setting while it is being made, by its buttons or in writing. It stands at a value that somebody
 * else left: it counts only once it was touched or kept on purpose.
 */
export class SettingEntry<A extends AskToSet = Ask> {
  readonly ask: A;
  value = $state.raw<Quantity>();
  /** As it was typed; undefined where the value was set by its buttons. */
  typed = $state<string>();
  fault = $state.raw<EntryFault>();
  settled = $state(false);

  constructor(ask: A, start: Quantity | undefined) {
    this.ask = ask;
    this.value = start;
  }

  get isRight(): boolean {
    return this.settled && this.fault === undefined && this.value !== undefined;
  }

  nudge(direction: 1 | -1): void {
    const { entry } = this.ask.sheetNumber;
    if (!entry) return;
    this.value = nudged(entry, this.value ?? limitsOf(entry).from, direction);
    this.#settle();
  }

  keep(): void {
    if (this.value) this.#settle();
  }

  #settle(): void {
    this.typed = undefined;
    this.fault = undefined;
    this.settled = true;
  }

  /** Reads what was typed. A number alone is read in the unit that the setting is shown in. */
  write(typed: string, language: Language): void {
    this.typed = typed;
    this.settled = true;
    const { dimension, entry } = this.ask.sheetNumber;
    const read = parseQuantity(typed, dimension);
    const again =
      !read.ok && read.error.code === 'MISSING_UNIT'
        ? parseQuantity(`${typed} ${this.#unit(language)}`, dimension)
        : read;
    if (!again.ok) {
      this.fault = again.error.message;
      return;
    }
    this.fault = entry && !isSettable(entry, again.value) ? 'not-offered' : undefined;
    if (!this.fault) this.value = again.value;
  }

  /** What stands behind the number when the trade says it: `in`, `°F`. */
  #unit(language: Language): string {
    const { entry } = this.ask.sheetNumber;
    const shown = this.value ?? (entry && limitsOf(entry).to);
    return shown ? quantityWords(shown, language).replace(/^[\d\s.,/'"-]+/, '') : '';
  }
}

/** The values as they are kept, by the id of their setting. */
export function settingsIn(
  entries: readonly Pick<SettingEntry<AskToSet>, 'ask' | 'value'>[],
): Readonly<Record<string, string>> {
  const settings: Record<string, string> = {};
  for (const { ask, value } of entries) if (value) settings[ask.id] = quantityText(value);
  return settings;
}
