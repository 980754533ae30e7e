/**
 * Reads an amount as the trade writes it: 12'-6 1/2", 3.82 m, 9 cartridges. A number without a unit is
 * in the unit of the style. What is of another kind than asked is read as what it is.
 */
import { quantity } from '#engine/measure/conversion.ts';
import type { Dimension } from '#engine/measure/dimension.ts';
import { measureFault, type MeasureFault } from '#engine/measure/fault.ts';
import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import { readParts } from '#engine/measure/part-text.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Unit } from '#engine/measure/unit.ts';
import { units } from '#engine/measure/units.ts';
import { written } from '#engine/measure/written.ts';
import { ok, type Result } from '#engine/result.ts';
import type { Text } from '#engine/text.ts';
import { isPlain } from './formula-kinds.ts';
import { unitOfStyle, type Style } from './style.ts';

export type AmountRead = {
  readonly value: Quantity;
  /** The unit it was written in, where it was a single one; none for feet and inches together. */
  readonly unit: Unit | undefined;
};

export function readAmount(
  text: string,
  asked: Dimension,
  style: Style,
): Result<AmountRead, MeasureFault> {
  const unit = unitOfStyle(style);
  const bare = parseQuantity(text);
  const isBare = bare.ok && isPlain(bare.value.dimension) && /^[^%\p{L}]*$/u.test(text);
  const isInUnit = !isPlain(asked) || unit.label.en[0] === '%';
  if (bare.ok && isBare && isInUnit) return ok({ value: quantity(bare.value.value, unit), unit });
  const read = parseQuantity(text, asked.name === 'product' ? undefined : asked.name);
  if (read.ok) return ok({ value: read.value, unit: writtenUnit(text, asked) });
  const isCut = read.error.code === 'MISSING_UNIT' && afterFeet.test(text);
  const inches = isCut ? parseQuantity(`${text}"`, 'length') : undefined;
  if (inches?.ok) return ok({ value: inches.value, unit: undefined });
  if (bare.ok) return ok({ value: bare.value, unit: writtenUnit(text, undefined) });
  return (isPlain(asked) ? counted(text) : undefined) ?? read;
}

/** 12'6 and 12 ft 6 1/2: after feet, on every site, comes inches. Common practice. */
const afterFeet = /(?:['′’]|ft\.?|pies?)\s*-?\s*\d[\d\s/.]*$/iu;

/** `9 cartridges`, `11 hojas`: after the number, words that are no unit. */
function counted(text: string): Result<AmountRead, MeasureFault> | undefined {
  const amount = /^\s*([^\p{L}]*?)\s+\p{L}[\p{L}\s.-]*$/u.exec(text)?.[1];
  if (amount === undefined || amount === '') return undefined;
  const read = parseQuantity(amount, 'count');
  return read.ok ? ok({ value: read.value, unit: units.each }) : undefined;
}

function writtenUnit(text: string, asked: Dimension | undefined): Unit | undefined {
  const source = written(text.replace(/^\s*-?\s*/, ''));
  const parts = readParts({ source, wanted: asked?.name }, 0);
  return parts.ok && parts.value.length === 1 ? parts.value[0].unit : undefined;
}

const yesWords = ['yes', 'y', 'true', 'si', 's'];
const noWords = ['no', 'n', 'false'];

type YesOrNo = { readonly yes: Text; readonly no: Text };

/** Yes or no in either language, or the words of the family for it. */
export function readYesOrNo({ yes, no }: YesOrNo, text: string): Result<boolean, MeasureFault> {
  const given = plainWords(text);
  const says = (words: readonly string[], label: Text): boolean =>
    [...words, plainWords(label.en), plainWords(label.es)].includes(given);
  if (says(yesWords, yes)) return ok(true);
  if (says(noWords, no)) return ok(false);
  const message = {
    en: `This is neither “${yes.en}” nor “${no.en}”. Write yes or no.`,
    es: `Esto no es “${yes.es}” ni “${no.es}”. Escriba sí o no.`,
  };
  return measureFault('NOT_A_NUMBER', { at: 0, end: text.length }, message);
}

const plainWords = (text: string): string =>
  written(text)
    .plain.replace(/[^a-z0-9 ]/g, '')
    .trim();
