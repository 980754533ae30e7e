import {
  weatherConditions,
  type Condition,
  type SiteQuestion,
  type SiteValue,
  type Weather,
  type WeatherCondition,
} from '#engine/method/site.ts';
import { quantityOf } from './quantity.ts';
import { choices, entries, record } from './group.ts';
import { atLeastOne, list } from './list.ts';
import { mapped, optional, type Reader } from './reader.ts';
import { idOf, text } from './words.ts';

export const conditionDimensions = {
  'air-temperature': 'temperature',
  'surface-temperature': 'temperature',
  'relative-humidity': 'ratio',
} as const satisfies Record<WeatherCondition, string>;

/** What is stated of the weather. */
export const conditions: Reader<Weather> = mapped(
  choices(weatherConditions, 'UNKNOWN_CONDITION', 'condition of the weather', (condition) =>
    quantityOf(conditionDimensions[condition]),
  ),
  (found) => new Map([...found].flatMap(([key, value]) => (value ? [[key, value] as const] : []))),
);

const value = record({ name: text, conditions: optional(conditions, new Map()) });

const values: Reader<readonly SiteValue[]> = mapped(
  atLeastOne(entries(value, 'a group of values, each under its id'), 'value'),
  (found) => found.map(([id, read]) => ({ id, ...read })),
);

const question = record({ name: text, values });

export const siteQuestions: Reader<readonly SiteQuestion[]> = mapped(
  entries(question, 'a group of questions, each under its id'),
  (found) => found.map(([id, read]) => ({ id, ...read })),
);

/** Where no condition is written, every site will do. */
export const anySite: Condition = new Map();

export const when: Reader<Condition> = optional(
  mapped(
    entries(list(idOf('value'), 'values of the question'), 'site questions with their values'),
    (found) => new Map(found),
  ),
  anySite,
);
