import { dimension } from '#engine/measure/dimension.ts';
import { compare } from '#engine/measure/arithmetic.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Curve } from '#engine/method/data-sheet.ts';
import { weatherConditions } from '#engine/method/site.ts';
import { anyQuantity, isOfDimension } from './quantity.ts';
import { record } from './group.ts';
import { atLeastOne, list, pair } from './list.ts';
import { conditionDimensions } from './site.ts';
import { placeAt, type Path, type SourceFile } from './source-file.ts';
import { choiceOf } from './words.ts';

export const weatherCondition = choiceOf(
  weatherConditions,
  'UNKNOWN_CONDITION',
  'condition of the weather',
);

export const rows = atLeastOne(
  list(pair(anyQuantity, anyQuantity, 'condition, value'), 'rows: [[condition, value], ...]'),
  'row',
);

export const factor = record({ by: weatherCondition, rows });

type WrittenRows = typeof rows.blank;

/** The curve that the rows draw, or nothing where one of them could not be read. */
export function curveFrom(
  file: SourceFile,
  path: Path,
  by: Curve['by'],
  written: WrittenRows,
): Curve | undefined {
  if (written.length === 0) return undefined;
  const found = written.flatMap(([at, value], row) =>
    at && isOfDimension(file, [...path, row, 0], at, dimension(conditionDimensions[by])) && value
      ? [{ at, value }]
      : [],
  );
  if (found.length < written.length) return undefined;
  found.forEach(({ at }, row) => {
    const above = found[row - 1];
    if (above && !isBelow(above.at, at)) unsorted(file, [...path, row, 0]);
  });
  return { by, rows: found };
}

const isBelow = (a: Quantity, b: Quantity): boolean => compare(a, b) < 0;

const unsorted = (file: SourceFile, path: Path): void =>
  file.fault(
    'UNSORTED_ROWS',
    placeAt(file, path),
    'This row does not come after the one before it.',
    'Sort the rows by the condition, the smallest first, each value once.',
  );
