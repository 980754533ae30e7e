/** How the values of a formula are shown in its working. */
import { commonDimension } from '#engine/measure/dimension.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Text } from '#engine/text.ts';
import type { Part } from './family.ts';
import { inEach } from './fill-text.ts';
import { isPlain } from './formula-kinds.ts';
import type { Term } from './formula.ts';
import { amountOf, type Instance } from './instance.ts';
import { write } from './problem.ts';
import type { Leaf, Shown } from './shown.ts';
import { isTape, unitOfStyle, usualStyle, writeQuantity, type Style } from './style.ts';
import { namesIn } from './terms.ts';

/** A formula with each of its names and values put as `leaf` says. */
export function show(term: Term, leaf: (term: Term) => Leaf): Shown {
  if (!('args' in term)) return leaf(term);
  return { term, op: term.op, args: term.args.map((arg) => show(arg, leaf)) };
}

const exactly = (text: Text): Leaf => ({ text, about: false });

/** What a name is called. */
export function nameLeaf(term: Term, { takeoff }: Instance): Leaf {
  const { family, sheet } = takeoff;
  if (term.op === 'value') return exactly(inEach(() => term.written));
  if ('args' in term) throw new RangeError('Only a name or a value is a leaf.');
  const named = [...family.givens, ...family.parts].find(({ id }) => id === term.name);
  const number = family.sheetNumbers.find(({ number }) => number === term.name);
  const text = named?.name ?? (number && sheet.numbers.get(number.number)?.name);
  return exactly(text ?? inEach(() => term.name));
}

/** What a name or a value is worth: as the problem states it, unless the part wants another unit. */
export function valueLeaf(term: Term, instance: Instance, part: Part): Leaf {
  const value = amountOf(term, instance.slate);
  if (typeof value === 'boolean') return exactly(stated(term, instance));
  const style = styleShown(part, value);
  if (style !== undefined) return quantityLeaf(value, style);
  if (term.op === 'value') {
    return isPlain(value.dimension)
      ? exactly(inEach(() => term.written))
      : quantityLeaf(value, styleOnTheWay(value, part, instance));
  }
  if (term.op === 'part' && isPlain(value.dimension)) return quantityLeaf(value, '1');
  return exactly(stated(term, instance));
}

/** As the problem states it. */
export const stated = (term: Term, instance: Instance): Text =>
  inEach((language) => ('name' in term ? write(instance, term.name, language) : ''));

/** What was worked out on the way. */
export function resultLeaf(term: Term, instance: Instance, part: Part): Leaf {
  const value = amountOf(term, instance.slate);
  if (typeof value === 'boolean') throw new RangeError('Only amounts are worked out on the way.');
  return quantityLeaf(value, styleShown(part, value) ?? styleOnTheWay(value, part, instance));
}

/**
 * As the answer, or else as the first given of that kind in the formula. A plain number on the way is no
 * percentage, though it may lie below one.
 */
function styleOnTheWay(value: Quantity, { answer, formula }: Part, instance: Instance): Style {
  const { dimension } = value;
  if (isPlain(dimension)) return '1';
  const fits = (style: Style): boolean =>
    commonDimension(unitOfStyle(style).dimension, dimension) !== undefined;
  if (answer.kind === 'quantity' && fits(answer.style)) return answer.style;
  const read = new Set(namesIn(formula).map(({ name }) => name));
  const styles = instance.takeoff.family.givens.flatMap(({ id, style }) =>
    read.has(id) && style !== undefined ? [style] : [],
  );
  return styles.find(fits) ?? usualStyle(value);
}

/** The unit that the part shows such quantities in, if it names one. */
export const styleShown = ({ shown }: Part, { dimension }: Quantity): Style | undefined =>
  isPlain(dimension)
    ? undefined
    : shown.find((style) => commonDimension(unitOfStyle(style).dimension, dimension));

const decimalStyles: Readonly<Record<string, Style>> = {
  'feet-inches': 'ft',
  inches: 'in',
  millimetres: 'mm',
  metres: 'm',
};

/** What no tape shows is written in decimals; money always to the cent. */
export function quantityLeaf(value: Quantity, wanted: Style): Leaf {
  const isOnTape =
    !isTape(wanted) || !writeQuantity(value, wanted, 'en', { honest: true }).startsWith('≈');
  const style = isOnTape ? wanted : (decimalStyles[wanted] ?? wanted);
  const places = style === '$' ? 2 : 3;
  return {
    text: inEach((language) => writeQuantity(value, style, language, { places })),
    about: writeQuantity(value, style, 'en', { places, honest: true }).startsWith('≈'),
  };
}
