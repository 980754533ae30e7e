import { quantity } from '#engine/measure/conversion.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { DataSheet } from '#engine/method/data-sheet.ts';
import type { NumberId } from '#engine/method/method.ts';
import type { Family, GivenId, PartId } from '#engine/takeoff/family.ts';
import type { Amount, Instance } from '#engine/takeoff/instance.ts';
import { jobSheet } from '#engine/takeoff/job-sheet.ts';
import { readAnswer } from '#engine/takeoff/read-answer.ts';
import { judgeAnswer } from '#engine/takeoff/marks.ts';
import { takeoffOf, type Takeoff } from '#engine/takeoff/takeoff.ts';
import type { Verdict } from '#engine/takeoff/verdict.ts';
import { openContent } from '#server/content.ts';
import { q } from './worked-out.ts';

export const content = openContent();

/** The shipped data sheet of a family with some of its numbers set to exactly these. */
function sheetWith(sheet: DataSheet, numbers: Readonly<Record<string, string>>): DataSheet {
  const changed = Object.entries(numbers).map(([id, text]) => {
    const number = sheet.numbers.get(id as NumberId);
    if (!number) throw new Error(`No number ${id}.`);
    const value = q(text);
    return [
      number.id,
      { ...number, rule: { kind: 'exactly', value } as const, aim: value },
    ] as const;
  });
  return { ...sheet, numbers: new Map([...sheet.numbers, ...changed]) };
}

export function takeoff(id: string, numbers: Readonly<Record<string, string>> = {}): Takeoff {
  const family = [...content.takeoffs.values()].find((known) => known.id === id);
  if (!family) throw new Error(`No family ${id}.`);
  return fitted(family, numbers);
}

export function fitted(family: Family, numbers: Readonly<Record<string, string>> = {}): Takeoff {
  const sheet = content.dataSheets.get(family.dataSheet);
  if (!sheet) throw new Error(`No data sheet ${family.dataSheet}.`);
  const found = takeoffOf(family, sheetWith(sheet, numbers));
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
}

/** The family worked with these givens, as a job sheet does. */
export function job(
  id: string,
  givens: Readonly<Record<string, string>>,
  numbers: Readonly<Record<string, string>> = {},
): Instance {
  return jobOf(takeoff(id, numbers), givens);
}

export function jobOf(takeoff: Takeoff, givens: Readonly<Record<string, string>>): Instance {
  const entries = new Map(Object.entries(givens).map(([given, text]) => [given as GivenId, text]));
  const sheet = jobSheet(takeoff, entries);
  if (!sheet.ok) throw new Error(sheet.error.map(({ message }) => message.en).join(' '));
  return sheet.value.instance;
}

export function part(instance: Instance, id: string) {
  const found = instance.parts.find(({ part }) => part.id === id);
  if (!found) throw new Error(`No part ${id}.`);
  return found;
}

/** The right answer of a part, and what it was before rounding, as plain numbers in a unit. */
export function answers(instance: Instance, id: string, unit: string) {
  const { exact, right } = part(instance, id);
  return { exact: inUnit(exact, unit), right: inUnit(right, unit) };
}

export function inUnit(amount: Amount, unit: string): number {
  if (typeof amount === 'boolean') throw new Error('This is no amount.');
  const one: Quantity = unit === '1' ? quantity(1, '1') : q(`1 ${unit}`);
  const { s, n, d } = amount.value.div(one.value);
  return Number(s * n) / Number(d);
}

export function verdictOn(instance: Instance, id: string, text: string): Verdict {
  const { part: asked } = part(instance, id);
  const read = readAnswer(asked, text);
  if (!read.ok) throw new Error(`${text}: ${read.error.message.en}`);
  return judgeAnswer(instance, id as PartId, read.value);
}
