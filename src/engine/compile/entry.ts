import { isMap, isSeq } from 'yaml';
import { compare } from '#engine/measure/arithmetic.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Entry } from '#engine/method/data-sheet.ts';
import { record } from './group.ts';
import { list } from './list.ts';
import { anyQuantity, areAlike, difference, isDistance } from './quantity.ts';
import { optional, type Reader } from './reader.ts';
import { placeAt, type Path, type SourceFile } from './source-file.ts';

const range = record({ from: anyQuantity, to: anyQuantity, by: difference });

const ofRange: Reader<void> = optional(
  {
    blank: undefined,
    read: ({ file, name }) => {
      const message = 'This belongs to a range, and a list stands beside it.';
      file.fault('WRONG_SHAPE', name, message, 'Keep one-of, or else from, to and by.');
    },
  },
  undefined,
);

const values = list(anyQuantity, 'values');

const twoOrMore: typeof values = {
  ...values,
  read: (here) => {
    const found = values.read(here);
    if (isSeq(here.node) && found.length < 2) {
      const message = 'Fewer than two values leave nothing to choose.';
      const cure = 'Write two values or more, right ones and wrong ones.';
      here.file.fault('WRONG_SHAPE', here.name, message, cure);
    }
    return found;
  },
};

const choice = record({
  'one-of': twoOrMore,
  from: ofRange,
  to: ofRange,
  by: ofRange,
});

type Written = typeof range.blank | typeof choice.blank;

export const writtenEntry: Reader<Written> = {
  blank: range.blank,
  read: (here) => {
    const isChoice = isMap(here.node) && here.node.has('one-of');
    return isChoice ? choice.read(here) : range.read(here);
  },
};

/** What a learner can set, of the same kind as the sample of the number's rule. */
export const entryFrom = (
  file: SourceFile,
  path: Path,
  written: Written,
  sample: Quantity,
): Entry | undefined =>
  'one-of' in written
    ? listFrom(file, [...path, 'one-of'], written['one-of'], sample)
    : rangeFrom(file, path, written, sample);

function listFrom(
  file: SourceFile,
  path: Path,
  written: readonly (Quantity | null)[],
  sample: Quantity,
): Entry | undefined {
  const values = written.flatMap((value, place) =>
    value && areAlike(file, [...path, place], value, sample) ? [value] : [],
  );
  if (values.length < Math.max(2, written.length)) return undefined;
  values.forEach((value, place) => {
    const below = values[place - 1];
    if (below && compare(below, value) >= 0) unsorted(file, [...path, place]);
  });
  return { kind: 'one-of', values };
}

const unsorted = (file: SourceFile, path: Path): void =>
  file.fault(
    'UNSORTED_VALUES',
    placeAt(file, path),
    'This value is not above the one before it.',
    'Sort the values, the smallest first, each once.',
  );

function rangeFrom(
  file: SourceFile,
  path: Path,
  { from, to, by }: typeof range.blank,
  sample: Quantity,
): Entry | undefined {
  const isRange =
    from &&
    to &&
    areAlike(file, [...path, 'from'], from, sample) &&
    areAlike(file, [...path, 'to'], to, sample);
  if (!isRange || !by || !isDistance(file, [...path, 'by'], by, sample)) return undefined;
  if (compare(from, to) > 0) {
    const message = 'The range ends before it begins.';
    file.fault('EMPTY_RANGE', placeAt(file, [...path, 'from']), message, 'Exchange from and to.');
    return undefined;
  }
  if (by.value.lte(0n)) {
    const message = 'The range never gets to its end in steps of nothing or less.';
    file.fault('EMPTY_RANGE', placeAt(file, [...path, 'by']), message, 'Write a step above 0.');
    return undefined;
  }
  return { kind: 'range', from, to, by };
}
