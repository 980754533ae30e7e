import { pictureKinds } from '#engine/takeoff/picture.ts';
import { takes } from '#engine/takeoff/family.ts';
import { topics } from '#engine/takeoff/topic.ts';
import type { DataSheetId, NumberId, SourceId } from '#engine/method/method.ts';
import { weatherConditions } from '#engine/method/site.ts';
import { formula } from './formula.ts';
import { choices, entries, record } from './group.ts';
import { atLeastOne, list, pair } from './list.ts';
import { anyQuantity, difference } from './quantity.ts';
import { optional } from './reader.ts';
import { choiceOf, flag, idOf, oneOf, plain, text } from './words.ts';

const words = pair(plain, plain, 'for one, for more');

const roundRule = record({
  up: optional(anyQuantity, undefined),
  down: optional(anyQuantity, undefined),
  nearest: optional(anyQuantity, undefined),
});

/** Here and below, `undefined` was not written, and `null` was but could not be read. */
const given = record({
  name: text,
  write: optional(plain, undefined),
  from: optional(anyQuantity, undefined),
  to: optional(anyQuantity, undefined),
  by: optional(difference, undefined),
  'one-of': optional(atLeastOne(list(anyQuantity, 'values'), 'value'), undefined),
  yes: optional(text, undefined),
  no: optional(text, undefined),
  sheet: optional(idOf<NumberId>('number of the data sheet'), undefined),
  take: optional(oneOf(takes, 'UNKNOWN_TAKE', 'value of a number to take'), undefined),
  at: optional(
    choices(weatherConditions, 'UNKNOWN_CONDITION', 'condition of the weather', () => formula),
    undefined,
  ),
  compute: optional(formula, undefined),
});

const slip = record({
  answer: formula,
  round: optional(roundRule, undefined),
  tell: text,
  'may-agree': optional(flag, false),
});

const part = record({
  name: text,
  ask: text,
  answer: formula,
  unit: optional(plain, undefined),
  called: optional(record({ en: words, es: words }), undefined),
  round: optional(roundRule, undefined),
  yes: optional(text, undefined),
  no: optional(text, undefined),
  why: optional(text, undefined),
  shown: optional(list(plain, 'units'), []),
  'may-be-trivial': optional(flag, false),
  slips: optional(entries(slip, 'a group of slips, each under its id'), []),
});

const picture = record({
  kind: choiceOf(pictureKinds, 'UNKNOWN_PICTURE', 'picture'),
  shows: entries(formula, 'measures, each with a name or a formula'),
});

export const writtenFamily = record({
  title: text,
  topic: oneOf(topics, 'UNKNOWN_TOPIC', 'topic'),
  'data-sheet': idOf<DataSheetId>('data sheet'),
  source: idOf<SourceId>('source'),
  intro: text,
  picture: optional(picture, undefined),
  'second-picture': optional(picture, undefined),
  givens: entries(given, 'a group of givens, each under its id'),
  needs: optional(list(record({ that: formula, say: text }), 'conditions'), []),
  where: optional(list(formula, 'conditions'), []),
  parts: atLeastOne(entries(part, 'a group of parts, each under its id'), 'part'),
});

export type WrittenFamily = typeof writtenFamily.blank;
export type WrittenGiven = typeof given.blank;
export type WrittenPart = typeof part.blank;
export type WrittenSlip = typeof slip.blank;
export type WrittenRound = typeof roundRule.blank;
