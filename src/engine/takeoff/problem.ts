import type { Dimension } from '#engine/measure/dimension.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { isWhole } from '#engine/measure/rational.ts';
import type { NumberId } from '#engine/method/method.ts';
import type { Language, Text } from '#engine/text.ts';
import { leave } from './base.ts';
import type { Answered, Given, GivenId, PartId, Picture } from './family.ts';
import { fillText, inEach } from './fill-text.ts';
import type { Term } from './formula.ts';
import { amountOf, type Amount, type Instance } from './instance.ts';
import type { Drawn } from './picture.ts';
import { number } from './slate.ts';
import { namesToWorkWith } from './terms.ts';
import { chartOf, type Chart } from './chart.ts';
import { unitOfStyle, usualStyle, writeCalled, writeQuantity, type Style } from './style.ts';

/** A problem in words: everything that is shown before it is answered. */
export type Problem = {
  readonly title: Text;
  readonly intro: Text;
  readonly asks: readonly { readonly part: PartId; readonly ask: Text }[];
  readonly givens: readonly Stated<GivenId>[];
  /** What of the data sheet it works with. */
  readonly numbers: readonly Stated<NumberId>[];
  /** Its numbers that depend on the weather, to be read off by whoever solves it. */
  readonly charts: readonly Chart[];
  readonly pictures: readonly Drawn[];
};

/** As much of an instance as is known before its answers are. */
type Worked = Pick<Instance, 'takeoff' | 'slate'>;

export type Stated<Id> = { readonly id: Id; readonly name: Text; readonly value: Text };

export function problemOf(instance: Instance): Problem {
  const { family } = instance.takeoff;
  const fill = (text: Text): Text =>
    fillText(text, (name, language) => write(instance, name, language));
  return {
    title: family.title,
    intro: fill(family.intro),
    asks: family.parts.map(({ id, ask }) => ({ part: id, ask: fill(ask) })),
    givens: family.givens.filter(isShown).map(({ id, name }) => ({
      id,
      name,
      value: inEach((language) => write(instance, id, language)),
    })),
    numbers: statedNumbers(instance),
    charts: chartsOf(instance),
    pictures: instance.takeoff.family.pictures.map((picture) => drawnOf(picture, instance)),
  };
}

/** A text of the family with the numbers of the problem in it. */
export const filledText = (instance: Worked, text: Text): Text =>
  fillText(text, (name, language) => write(instance, name, language));

function statedNumbers(instance: Instance): readonly Stated<NumberId>[] {
  const { family, sheet } = instance.takeoff;
  const used = namesToWorkWith(family);
  const numbers = family.sheetNumbers.filter(({ number }) => used.has(number));
  return numbers.map(({ number: id, term }) => ({
    id,
    name: sheet.numbers.get(id)!.name,
    value: inEach((language) => writeAmount(amountOf(term, instance.slate), undefined, language)),
  }));
}

/** What is computed or read off a chart is part of the working. */
const isShown = ({ from }: Given): boolean =>
  from.kind !== 'computed' && !(from.kind === 'sheet' && from.at.size > 0);

function chartsOf({ takeoff }: Instance): readonly Chart[] {
  const { family, sheet } = takeoff;
  const read = family.givens.flatMap(({ from }) => (from.kind === 'sheet' ? [from.number] : []));
  return [...new Set(read)].flatMap((id) => {
    const number = sheet.numbers.get(id);
    return number?.rule.kind === 'by' ? [chartOf(number, number.rule)] : [];
  });
}

function drawnOf(picture: Picture, instance: Instance): Drawn {
  const shown = [...picture.shows].map(([measure, term]) => {
    const value = amountOf(term, instance.slate);
    const text = inEach((language) =>
      'name' in term
        ? write(instance, term.name, language)
        : writeAmount(value, undefined, language),
    );
    return { measure, value, text };
  });
  return {
    kind: picture.kind,
    measures: new Map(shown.map(({ measure, value }) => [measure, value])),
    written: new Map(shown.map(({ measure, text }) => [measure, text])),
  };
}

/** What a name stands for in this problem, as it is written there. */
export function write(instance: Worked, name: string, language: Language): string {
  const { family } = instance.takeoff;
  const given = family.givens.find(({ id }) => id === name);
  if (given) return writeGiven(given, amountOf(given.term, instance.slate), language);
  const part = family.parts.find(({ id }) => id === name);
  if (part) return writeAnswer(part.answer, amountOf(part.term, instance.slate), language);
  const sheet = family.sheetNumbers.find(({ number }) => number === name);
  return sheet ? writeAmount(valueOf(sheet.term, instance), undefined, language) : `{${name}}`;
}

const valueOf = (term: Term, { slate }: Worked): Quantity =>
  leave(number(term, slate), term.kind as Dimension);

export const writeGiven = ({ from, style }: Given, value: Amount, language: Language): string =>
  typeof value === 'boolean' && from.kind === 'either'
    ? (value ? from.yes : from.no)[language]
    : writeAmount(value, style, language);

export function writeAnswer(
  answer: Answered,
  value: Amount,
  language: Language,
  honest = false,
): string {
  if (answer.kind === 'decision') return (value === true ? answer.yes : answer.no)[language];
  if (typeof value === 'boolean') return String(value);
  return answer.called && !honest
    ? writeCalled(value, answer.called, language)
    : writeQuantity(value, answer.style, language, {
        honest,
        places: honest ? Math.max(3, placesOf(answer)) : placesOf(answer),
      });
}

/** As many decimals as the rounding shows. */
function placesOf({ round, style }: Extract<Answered, { readonly kind: 'quantity' }>): number {
  if (!round) return 2;
  const step = round.to.value.div(unitOfStyle(style).size);
  return [0, 1, 2, 3, 4].find((places) => isWhole(step.mul(10n ** BigInt(places)))) ?? 4;
}

const writeAmount = (value: Amount, style: Style | undefined, language: Language): string =>
  typeof value === 'boolean'
    ? String(value)
    : writeQuantity(value, style ?? usualStyle(value), language);
