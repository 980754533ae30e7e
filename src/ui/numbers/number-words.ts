/** Figures of statistics in the words of a site: the words come first, the figure after. */
import type { ItemFlag, ItemVerdict } from '#engine/statistics/item-verdict.ts';
import { reliableFrom } from '#engine/statistics/test-verdict.ts';
import type { Interval } from '#engine/statistics/wilson.ts';
import { percentOf } from '#ui/insight/share-words.ts';
import { m } from '#ui/messages/generated/messages.js';
import { noCurvesWords } from './fit-words.ts';
import type { PrecisionSaid } from './number-view.ts';

/** To two places, with a real minus sign. */
export const figure = (value: number, places = 2): string =>
  value
    .toFixed(places)
    .replace('-', '−')
    .replace(/^−(0\.0+)$/, '$1');

export const tooFewWords = ({ have, need }: { readonly have: number; readonly need: number }) =>
  m.numbers_too_few({ have, need });

export const intervalWords = ({ low, high }: Interval): string =>
  m.numbers_between({ low: percentOf(low), high: percentOf(high) });

export function sharpnessWords(precision: PrecisionSaid): string {
  if (!precision.enough) return tooFewWords(precision);
  if (precision.value.outcome !== 'converged') return noCurvesWords(precision.value);
  const { reliability } = precision.value;
  if (reliability >= 0.8) return m.numbers_apart_well();
  return reliability >= reliableFrom ? m.numbers_apart() : m.numbers_apart_hardly();
}

/** How much there is to see to, the most first; what cannot be said yet comes last. */
export function troubleOf({ standing, flags }: ItemVerdict): number {
  if (standing === 'too-few-answers') return -1;
  const weight = (flag: ItemFlag): number => {
    const isSure = 'isSure' in flag && flag.isSure;
    if (flag.kind === 'pulls-wrong-way') return isSure ? 8 : 4;
    if (flag.kind === 'differs-between-groups') return flag.size === 'large' ? 6 : 3;
    return isSure ? 2 : 1;
  };
  return flags.reduce((sum, flag) => sum + weight(flag), 0);
}

export const flagWords = (flag: ItemFlag): string => {
  switch (flag.kind) {
    case 'too-hard':
      return flag.isSure ? m.numbers_flag_hard() : m.numbers_flag_hard_maybe();
    case 'too-easy':
      return flag.isSure ? m.numbers_flag_easy() : m.numbers_flag_easy_maybe();
    case 'pulls-wrong-way':
      return flag.isSure ? m.numbers_flag_wrong_way() : m.numbers_flag_wrong_way_maybe();
    case 'differs-between-groups':
      return flag.favours === 'reference' ? m.numbers_flag_spanish() : m.numbers_flag_english();
  }
};

/** What to do about it. */
export const cureWords = (flag: ItemFlag): string => {
  switch (flag.kind) {
    case 'too-hard':
      return m.numbers_cure_hard();
    case 'too-easy':
      return m.numbers_cure_easy();
    case 'pulls-wrong-way':
      return m.numbers_cure_wrong_way();
    case 'differs-between-groups':
      return m.numbers_cure_differs();
  }
};

export function standingWords({ standing, flags, answers }: ItemVerdict): string {
  if (standing === 'too-few-answers') return m.numbers_standing_few({ count: answers });
  const [first] = flags;
  return first ? flagWords(first) : m.numbers_standing_sound();
}
