import { compare } from '#engine/measure/arithmetic.ts';
import { formatExact } from '#engine/measure/format-exact.ts';
import { ofBaseUnits, type Quantity } from '#engine/measure/quantity.ts';
import { choicesOf } from '#engine/method/offered.ts';
import { bounds, judge, leastOf, middleOf } from '#engine/method/rule.ts';
import type { Ask } from '#engine/method/sequence.ts';
import { pick, type Random } from '#engine/random.ts';

/** So many choices on either side of what is right are near enough to be taken by mistake. */
const near = 3;

/** What the learner sets: the aim of the data sheet, or a near miss, as text that loses nothing. */
export const chosenSetting = (ask: Ask, isOff: boolean, random: Random): string =>
  formatExact((isOff ? offBy(ask, random) : undefined) ?? rightFor(ask));

function rightFor({ rule, sheetNumber }: Ask): Quantity {
  const { aim, entry } = sheetNumber;
  const isRight = (value: Quantity) => judge(rule, value, entry).within;
  if (aim && isRight(aim)) return aim;
  const choices = entry ? choicesOf(entry).filter(isRight) : [];
  return (
    choices[Math.floor((choices.length - 1) / 2)] ??
    (isRight(middleOf(rule)) ? middleOf(rule) : leastOf(rule))
  );
}

/** One of the nearest wrong choices; nothing where every choice is right. */
function offBy({ rule, sheetNumber: { entry } }: Ask, random: Random): Quantity | undefined {
  if (!entry) return besides(rule);
  const wrong = choicesOf(entry).filter((value) => !judge(rule, value, entry).within);
  const { low, high } = bounds(rule);
  const below = wrong.filter((value) => low && compare(value, low) < 0).slice(-near);
  const above = wrong.filter((value) => high && compare(value, high) > 0).slice(0, near);
  const nearest = [...below, ...above];
  return nearest.length > 0 ? pick(random, nearest) : undefined;
}

/** Where nothing is offered to choose from: a tenth short of the least, or beyond the most. */
function besides(rule: Ask['rule']): Quantity | undefined {
  const { low, high } = bounds(rule);
  const end = low ?? high;
  if (!end) return undefined;
  const tenth = end.value.abs().div(10n);
  return ofBaseUnits(low ? end.value.sub(tenth) : end.value.add(tenth), end.dimension);
}
