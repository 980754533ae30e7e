/** What an operation gives for the kinds it is given, or why it makes no sense of them. */
import {
  commonDimension,
  dimension,
  dimensionOf,
  dimensionOfProduct,
  dimensionPhrase,
  type Dimension,
} from '#engine/measure/dimension.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Kind, Operation } from './formula.ts';

type Misfit = {
  readonly code: 'UNIT_MISMATCH' | 'WRONG_ARGUMENTS';
  readonly message: string;
  readonly cure: string;
};

type Found = Result<Kind, Misfit>;

/** How many arguments an operation takes, at least and at most. */
const arity: Readonly<Record<Operation, readonly [number, number]>> = {
  add: [2, 2],
  subtract: [2, 2],
  multiply: [2, 2],
  divide: [2, 2],
  power: [2, 2],
  negate: [1, 1],
  less: [2, 2],
  'at-most': [2, 2],
  more: [2, 2],
  'at-least': [2, 2],
  equal: [2, 2],
  different: [2, 2],
  and: [2, 2],
  or: [2, 2],
  not: [1, 1],
  ceil: [1, 2],
  floor: [1, 2],
  round: [1, 2],
  min: [2, 8],
  max: [2, 8],
  if: [3, 3],
};

export const kindPhrase = (kind: Kind): string =>
  kind === 'truth' ? 'true or false' : dimensionPhrase(kind);

const mismatch = (message: string, cure: string): Result<never, Misfit> =>
  fault({ code: 'UNIT_MISMATCH', message, cure });

const choose = 'Choose numbers with if().';

const plain = dimensionOf({});

export const isPlain = (kind: Kind): boolean =>
  kind !== 'truth' && commonDimension(kind, plain) !== undefined;

/** What both can be compared as; nothing where they cannot. */
export const commonKind = (a: Kind, b: Kind): Kind | undefined =>
  a === 'truth' || b === 'truth' ? (a === b ? a : undefined) : commonDimension(a, b);

export function kindOf(op: Operation, kinds: readonly Kind[]): Found {
  const [least, most] = arity[op];
  if (kinds.length < least || kinds.length > most) {
    const wanted = least === most ? `${least}` : `${least} to ${most}`;
    const message = `${op} takes ${wanted} values, and here are ${kinds.length}.`;
    return fault({ code: 'WRONG_ARGUMENTS', message, cure: 'Write them with commas between.' });
  }
  const [a, b, c] = kinds as readonly [Kind, Kind, Kind];
  switch (op) {
    case 'and':
    case 'or':
    case 'not':
      return truths(op, kinds);
    case 'if':
      return a === 'truth' ? same('choose between', b, c) : truths(op, [a]);
    case 'less':
    case 'at-most':
    case 'more':
    case 'at-least':
    case 'equal':
    case 'different': {
      const common = same('compare', a, b);
      return common.ok ? ok('truth') : common;
    }
    case 'min':
    case 'max':
      if (kinds.includes('truth'))
        return mismatch('True or false has no larger and smaller.', choose);
      return kinds.reduce<Found>(
        (found, kind) => (found.ok ? same('compare', found.value, kind) : found),
        ok(a),
      );
    default: {
      const odd = kinds.find((kind) => kind === 'truth');
      return odd
        ? mismatch('True or false cannot be reckoned with.', choose)
        : quantityOf(op, kinds as readonly Dimension[]);
    }
  }
}

function quantityOf(op: Operation, kinds: readonly Dimension[]): Found {
  const [a, b = plain] = kinds as readonly [Dimension, Dimension?];
  switch (op) {
    case 'add':
      return sum(a, b);
    case 'subtract':
      return differenceOf(a, b);
    case 'multiply':
      return scalable(op, a, b) ?? ok(dimensionOfProduct(a, b));
    case 'divide':
      return scalable(op, a, b) ?? ok(dimensionOfProduct(a, b, -1));
    case 'negate':
      return scalable(op, a) ?? ok(a);
    case 'ceil':
    case 'floor':
    case 'round': {
      const common = scalable('round', a) ?? same('round', a, b);
      if (common.ok || kinds.length === 2) return common;
      const cure = `Say to what: ${op}(..., "1 in").`;
      return mismatch(`${kindPhrase(a)} rounds to no whole number.`, cure);
    }
    default:
      throw new RangeError(`${op} gives no quantity by these alone.`);
  }
}

/** What a whole power of a quantity is. */
export const kindOfPower = (base: Kind, exponent: number): Found =>
  base === 'truth'
    ? mismatch('True or false cannot be reckoned with.', choose)
    : (scalable('raise', base) ?? ok(dimensionOfProduct(plain, base, exponent)));

const truths = (op: Operation, kinds: readonly Kind[]): Found => {
  const odd = kinds.find((kind) => kind !== 'truth');
  return odd
    ? mismatch(`${op} asks for true or false, and here is ${kindPhrase(odd)}.`, 'Compare it first.')
    : ok('truth');
};

function same(verb: string, a: Kind, b: Kind): Found {
  const common = commonKind(a, b);
  if (common) return ok(common);
  const message = `Cannot ${verb} ${kindPhrase(a)} and ${kindPhrase(b)}.`;
  return mismatch(message, 'Multiply or divide first so that both are of one kind.');
}

const isPoint = ({ name }: Dimension): boolean => name === 'temperature';
const isDifference = ({ name }: Dimension): boolean => name === 'temperature-difference';

function sum(a: Dimension, b: Dimension): Found {
  if (!isPoint(a) && !isPoint(b)) return same('add', a, b);
  const apart = isPoint(a) ? b : a;
  return isDifference(apart)
    ? ok(dimension('temperature'))
    : mismatch(
        `Cannot add ${kindPhrase(a)} and ${kindPhrase(b)}.`,
        'To a temperature, add a difference in F° or C°.',
      );
}

function differenceOf(a: Dimension, b: Dimension): Found {
  if (!isPoint(a)) return same('subtract', a, b);
  if (isPoint(b)) return ok(dimension('temperature-difference'));
  return isDifference(b) ? ok(a) : same('subtract', a, b);
}

const scalable = (verb: string, ...kinds: readonly Dimension[]): Found | undefined =>
  kinds.some(isPoint)
    ? mismatch(
        `Cannot ${verb} a temperature: its zero is not nothing.`,
        'Take the difference of two temperatures first.',
      )
    : undefined;
