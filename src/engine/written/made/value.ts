import type { SheetNumber } from '#engine/method/data-sheet.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { rational } from '#engine/measure/rational.ts';
import { choicesOf } from '#engine/method/offered.ts';
import { fixRule, leastOf } from '#engine/method/rule.ts';
import type { Ask } from '#engine/method/sequence.ts';
import { pick, shuffle, type Random } from '#engine/random.ts';
import { phrase } from '#engine/written/patterns.ts';
import { quantityText } from '#engine/written/number-words.ts';
import type { WrongChoice } from '#engine/written/question.ts';
import { ruleText } from '#engine/written/rule-text.ts';
import { askedOf, type Ground, type Maker } from './maker.ts';
import { soughtIn, type Sought } from './sought.ts';
import { unlike } from './unlike.ts';

/**
 * What a step is set to, among the nearest values that can be set and are not right, and other numbers of
 * the data sheet of the same kind. Where the rule is open at one end, where it ends is asked for, so that
 * the right value is not always the largest or the smallest.
 */
export const valueOf: Maker = (ground, random, id) => {
  const { sequence, patterns } = ground;
  const asks = sequence.steps.flatMap((step) => step.asks.map((ask) => ({ step, ask })));
  if (asks.length === 0) return undefined;
  const { step, ask } = pick(random, asks);
  const sought = soughtIn(ask);
  const right = sought && quantityText(sought.value);
  const wrong = right && unlike(right, wrongValues(ground, ask, sought, random));
  if (!wrong) return undefined;
  const { because, sheetNumber } = ask;
  const rule = ruleText(ask.rule);
  return {
    ...askedOf(
      ground,
      step,
      id,
      phrase(patterns, sought.pattern, { step: step.say, question: ask.ask }),
      phrase(patterns, 'value-point', { name: sheetNumber.name, rule, because }),
    ),
    kind: 'choose-one',
    right,
    wrong,
  };
};

/** So many of the nearest values to draw from, and so many of other numbers. */
const near = 4;

function wrongValues(
  { sequence: { dataSheet, weather }, patterns }: Ground,
  { rule, sheetNumber: { id, entry, dimension } }: Ask,
  sought: Sought,
  random: Random,
): readonly WrongChoice[] {
  const told = { rule: ruleText(rule) };
  const offered = entry ? choicesOf(entry).filter((value) => sought.isWrong(value)) : [];
  const settable = nearest(offered, sought.value)
    .slice(0, near)
    .map((value): WrongChoice => {
      const pattern = sought.isWithin(value) ? 'value-not-the-bound' : 'value-outside';
      return { say: quantityText(value), because: phrase(patterns, pattern, told) };
    });
  const others = [...dataSheet.numbers.values()]
    .filter((number) => number.id !== id && number.dimension === dimension)
    .map((number) => ({ number, value: leastOf(fixRule(number.rule, weather)) }))
    .filter(({ value }) => sought.isWrong(value) && isOfASize(value, sought.value))
    .map(({ number, value }) => ofOther(number, value, patterns));
  const [first, ...rest] = shuffle(random, settable);
  if (!first) return others;
  return [first, ...shuffle(random, [...rest, ...shuffle(random, others).slice(0, 2)])];
}

function ofOther(
  { name }: SheetNumber,
  value: Quantity,
  patterns: Ground['patterns'],
): WrongChoice {
  const say = quantityText(value);
  return { say, because: phrase(patterns, 'value-of-other', { other: name, rule: say }) };
}

const nearest = (values: readonly Quantity[], to: Quantity): readonly Quantity[] => {
  const off = (value: Quantity) => value.value.sub(to.value).abs();
  return values.toSorted((a, b) => off(a).compare(off(b)) || a.value.compare(b.value));
};

const farApart = rational(6);

/** Whether somebody could take one for the other: nobody does of 50 ft and 1/8 in. */
const isOfASize = (one: Quantity, other: Quantity): boolean => {
  const [a, b] = [one.value.abs(), other.value.abs()];
  return a.lte(b.mul(farApart)) && b.lte(a.mul(farApart)) && a.gt(0n);
};
