import { commonDimension, dimensionPhrase, type Dimension } from '#engine/measure/dimension.ts';
import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import { parseUnit } from '#engine/measure/parse-unit.ts';
import type { Unit } from '#engine/measure/unit.ts';
import type { DataSheet } from '#engine/method/data-sheet.ts';
import type { NumberId } from '#engine/method/method.ts';
import type { Asked, GiveNumber, NumberAnswer, NumberSlip } from '#engine/written/question.ts';
import { bounds } from '#engine/method/rule.ts';
import { numberRule, strays } from '#engine/written/number-rule.ts';
import { nearestCure } from '#engine/compile/names.ts';
import { isDistance } from '#engine/compile/quantity.ts';
import { placeAt } from '#engine/compile/source-file.ts';
import { faultAt, type At } from './at.ts';
import type { WrittenQuestion } from './question.ts';
import type { QuestionShelf } from './shelf.ts';

type WrittenNumber = NonNullable<WrittenQuestion['number']>;

export function draftNumber(
  at: At,
  written: WrittenNumber,
  asked: Asked,
  shelf: QuestionShelf,
): GiveNumber | undefined {
  const sheet = sheetFor(at, written, asked, shelf);
  const unit = unitFor(at, written.unit);
  const answer = sheet && answerFor(at, written, sheet, shelf);
  if (!sheet || !answer || !unit) return undefined;
  const dataSheet = sheet.id;
  const rule = numberRule({ answer, dataSheet }, shelf);
  if (!rule) return undefined;
  const { low, high } = bounds(rule.rule);
  const { dimension } = (low ?? high)!;
  if (!isOf(at, ['number', 'unit'], dimension, unit.dimension, `"${written.unit}" measures`)) {
    return undefined;
  }
  const slips = written.slips.flatMap(({ answer: slip, because }, index): NumberSlip[] => {
    const below = ['number', 'slips', index, 'answer'];
    if (!slip || !isOf(at, below, dimension, slip.dimension, 'This is')) return [];
    if (strays(rule, slip) === 0) {
      const cure = 'Write a wrong answer that people give, or leave the slip out.';
      faultAt(at, below, 'SLIP_IS_RIGHT', 'This slip is judged right.', cure);
    }
    return [{ answer: slip, because }];
  });
  return { ...asked, kind: 'number', dataSheet, answer, unit: written.unit, slips };
}

function sheetFor(
  at: At,
  { 'data-sheet': named }: WrittenNumber,
  { dataSheet }: Asked,
  { dataSheets, sheetIds }: QuestionShelf,
): DataSheet | undefined {
  const id = named ?? dataSheet;
  if (named && !sheetIds.has(named)) {
    const cure = nearestCure(named, sheetIds);
    const message = `There is no data sheet "${named}".`;
    faultAt(at, ['number', 'data-sheet'], 'UNKNOWN_DATA_SHEET', message, cure);
  }
  return dataSheets.get(id);
}

function unitFor(at: At, name: string): Unit | undefined {
  const unit = parseUnit(name);
  if (unit.ok) return unit.value;
  const cure = 'Write a unit such as in, ft, min, °F, %, or 1 for a plain number.';
  if (name !== '') {
    faultAt(at, ['number', 'unit'], 'UNKNOWN_UNIT', `"${name}" is no unit.`, cure);
  }
  return undefined;
}

/** What starts like an id names a number of the data sheet; all else is a quantity. */
function answerFor(
  at: At,
  { answer: written, within }: WrittenNumber,
  sheet: DataSheet,
  { brokenNumbers }: QuestionShelf,
): NumberAnswer | undefined {
  const below = ['number', 'answer'];
  if (/^[a-z]/.test(written)) {
    const number = sheet.numbers.get(written as NumberId);
    if (!number) {
      const message = `The data sheet "${sheet.id}" has no number "${written}".`;
      const cure = nearestCure(written, sheet.numbers.keys());
      if (!brokenNumbers.has(written as NumberId)) {
        faultAt(at, below, 'UNKNOWN_NUMBER', message, cure);
      }
      return undefined;
    }
    if (number.rule.kind === 'by') {
      const message = `"${written}" depends on the weather, which no question states.`;
      const cure = 'Say the weather in the question, and write the quantity: 6 min.';
      faultAt(at, below, 'UNSTATED_CONDITION', message, cure);
      return undefined;
    }
    if (within !== undefined) {
      const cure = 'Leave it out: the number has a rule of its own.';
      const message =
        '"within" belongs to a quantity, and a number of the data sheet stands there.';
      faultAt(at, ['number', 'within'], 'WRONG_SHAPE', message, cure);
    }
    return { kind: 'sheet', number: number.id };
  }
  const parsed = parseQuantity(written);
  if (!parsed.ok) {
    const [what = '', ...cures] = parsed.error.message.en.split(/(?<=\.) (?=[A-Z])/);
    const cure = cures.join(' ') || 'Write a number and its unit: 8 in.';
    if (written !== '') faultAt(at, below, 'BAD_QUANTITY', what, cure);
    return undefined;
  }
  const { value } = parsed;
  const path = [...at.path, 'number', 'within'];
  if (within === null || (within && !isDistance(at.file, path, within, value))) return undefined;
  return { kind: 'quantity', value, within };
}

function isOf(
  at: At,
  below: readonly (string | number)[],
  wanted: Dimension,
  found: Dimension,
  what: string,
): boolean {
  if (commonDimension(wanted, found)) return true;
  const message = `${what} ${dimensionPhrase(found)}, and the answer is ${dimensionPhrase(wanted)}.`;
  at.file.fault(
    'UNIT_MISMATCH',
    placeAt(at.file, [...at.path, ...below]),
    message,
    'Write it in a unit of the same kind.',
  );
  return false;
}
