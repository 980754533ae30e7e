import { compare } from '#engine/measure/arithmetic.ts';
import { commonDimension, dimensionPhrase } from '#engine/measure/dimension.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Unit } from '#engine/measure/unit.ts';
import type { Shelf } from '#engine/marking/attempt-from.ts';
import type { Text } from '#engine/text.ts';
import type { Answer } from './answer.ts';
import type { Fitted } from './fitted.ts';
import { grade } from './grade.ts';
import { inEach, quantityText } from './number-words.ts';
import { numberRule, strays, type NumberRule } from './number-rule.ts';
import type { GiveNumber } from './question.ts';
import { numberAlone, readNumber, unitNamed } from './read-number.ts';
import { ruleText } from './rule-text.ts';
import type { NumberFinding, NumberVerdict } from './verdict.ts';

/** A slip is known only of a wrong answer: where a sheet makes it right, it is right. */
export function markNumber(
  question: Fitted<GiveNumber>,
  answer: Answer,
  shelf: Shelf,
): NumberVerdict {
  const asked = numberRule(question, shelf);
  if (!asked) throw new RangeError(`"${question.id}" has no number to be judged by.`);
  const unit = unitNamed(question.unit);
  const text = answer.kind === 'number' ? answer.text : '';
  const read = readNumber(text, unit);
  const verdict = (found: NumberFinding, because?: Text): NumberVerdict => ({
    kind: 'number',
    ...grade(found === 'right' ? 1 : 0),
    point: question.point,
    found,
    read: read.ok ? quantityText(read.value) : undefined,
    right: ruleText(asked.rule),
    because,
  });
  if (!read.ok) return verdict('unreadable', read.error.message);
  const given = read.value;
  if (!commonDimension(given.dimension, unit.dimension)) {
    return verdict('wrong-unit', otherKind(given, unit));
  }
  const side = strays(asked, given);
  if (side === 0) return verdict('right');
  const slip = question.slips.find((known) => compare(known.answer, given) === 0);
  if (slip) return verdict('slip', slip.because);
  if (isRightNumber(text, unit, asked)) return verdict('wrong-unit', otherUnit(unit));
  return side < 0 ? verdict('too-low', tooLow) : verdict('too-high', tooHigh);
}

function isRightNumber(text: string, unit: Unit, asked: NumberRule): boolean {
  const alone = numberAlone(text, unit);
  return alone !== undefined && strays(asked, alone) === 0;
}

const otherKind = ({ dimension }: Quantity, unit: Unit): Text => ({
  en: `This is ${dimensionPhrase(dimension, 'en')}. Asked for is ${dimensionPhrase(unit.dimension, 'en')}.`,
  es: `Esto es ${dimensionPhrase(dimension, 'es')}. Se pide ${dimensionPhrase(unit.dimension, 'es')}.`,
});

const otherUnit = (unit: Unit): Text => {
  const label = inEach((language) => unit.label[language][1]);
  return {
    en: `The number is right, and the unit beside it is not: it is in ${label.en}.`,
    es: `El número está bien, pero la unidad no: va en ${label.es}.`,
  };
};

const tooLow: Text = { en: 'That is too little.', es: 'Es muy poco.' };
const tooHigh: Text = { en: 'That is too much.', es: 'Es demasiado.' };
