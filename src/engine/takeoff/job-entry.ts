/** What a job sheet asks for, and how what is entered is read. */
import { commonDimension, type Dimension } from '#engine/measure/dimension.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { isWhole } from '#engine/measure/rational.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Text } from '#engine/text.ts';
import type { Family, Given, GivenId } from './family.ts';
import { isPlain } from './formula-kinds.ts';
import type { Amount } from './instance.ts';
import { readAmount, readYesOrNo } from './read-amount.ts';
import { usualStyle, type Style } from './style.ts';

export type JobEntry = {
  readonly id: GivenId;
  readonly name: Text;
  /** Yes or no in the words of the family, or the unit of a number without one. */
  readonly asks:
    | { readonly kind: 'either'; readonly yes: Text; readonly no: Text }
    | { readonly kind: 'amount'; readonly style: Style; readonly least: Quantity };
};

export type JobFault = {
  readonly code: 'MISSING' | 'UNREADABLE' | 'WRONG_UNIT' | 'OUT_OF_RANGE' | 'NOT_WHOLE' | 'NEED';
  /** None: the entries do not go together. */
  readonly given: GivenId | undefined;
  /** Which entries it speaks of: one of them must change. */
  readonly among: readonly GivenId[];
  readonly message: Text;
};

/** One for each given that a seed would draw. */
export const jobEntries = ({ givens }: Family): readonly JobEntry[] =>
  givens.flatMap((given) => {
    const asks = askedOf(given);
    return asks ? [{ id: given.id, name: given.name, asks }] : [];
  });

function askedOf({ from, style }: Given): JobEntry['asks'] | undefined {
  if (from.kind === 'either') return from;
  const least =
    from.kind === 'range' ? from.from : from.kind === 'one-of' ? from.values[0] : undefined;
  return least && { kind: 'amount', style: style ?? usualStyle(least), least };
}

/** No real wall is larger than this many times what the practice draws. */
const mostTimes = 1000n;

export function readEntry(given: Given, text: string | undefined): Result<Amount, JobFault> {
  const refuse = (code: JobFault['code'], message: Text): Result<never, JobFault> =>
    fault({ code, given: given.id, among: [given.id], message });
  const asks = askedOf(given);
  if (!asks || text === undefined || text.trim() === '') {
    return refuse('MISSING', { en: 'Enter this.', es: 'Anote este dato.' });
  }
  if (asks.kind === 'either') {
    const read = readYesOrNo(asks, text);
    return read.ok ? read : refuse('UNREADABLE', read.error.message);
  }
  const asked = asks.least.dimension;
  const read = readAmount(text, asked, asks.style);
  if (!read.ok) return refuse('UNREADABLE', read.error.message);
  const { value } = read.value;
  if (!commonDimension(value.dimension, asked)) return refuse('WRONG_UNIT', otherUnit);
  if (isPlain(asked) && isCounted(given) && !isWhole(value.value)) {
    return refuse('NOT_WHOLE', { en: 'Enter a whole number.', es: 'Anote un número entero.' });
  }
  return isOutside(given, value, asked) ? refuse('OUT_OF_RANGE', outside) : ok(value);
}

/** Whether practice draws whole numbers only. */
const isCounted = ({ from }: Given): boolean =>
  from.kind === 'range'
    ? isWhole(from.from.value) && isWhole(from.by.value)
    : from.kind === 'one-of' && from.values.every(({ value }) => isWhole(value));

const otherUnit: Text = {
  en: 'The unit does not fit here. Enter it in another.',
  es: 'La unidad no corresponde. Anótelo en otra.',
};

const outside: Text = {
  en: 'No wall has this. Check the number and its unit.',
  es: 'Ningún muro tiene esto. Revise el número y su unidad.',
};

function isOutside({ from }: Given, { value }: Quantity, { name }: Dimension): boolean {
  if (name === 'temperature' || name === 'temperature-difference') return false;
  if (from.kind !== 'range') return value.lt(0n) || value.gt(1_000_000_000n);
  const isTooLittle = from.from.value.gt(0n) ? value.lte(0n) : value.lt(0n);
  return isTooLittle || value.gt(from.to.value.abs().mul(mostTimes));
}
