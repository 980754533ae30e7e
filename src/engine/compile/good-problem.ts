/**
 * Tries a family on its data sheet: a few good problems must come out of some hundred draws. Otherwise
 * it says what stood in the way: a slip that is never wrong, or what most draws fell short of.
 */
import type { DataSheet } from '#engine/method/data-sheet.ts';
import { randomFrom } from '#engine/random.ts';
import { drawGivens } from '#engine/takeoff/draw-givens.ts';
import type { Family } from '#engine/takeoff/family.ts';
import { judgeDraw, slateWith, type Rejection } from '#engine/takeoff/instance.ts';
import { takeoffOf } from '#engine/takeoff/takeoff.ts';
import { keyAt, type Path, type SourceFile } from './source-file.ts';

const enough = 3;
const draws = 300;

export function checkProblems(file: SourceFile, family: Family, sheet: DataSheet): void {
  const takeoff = takeoffOf(family, sheet);
  if (!takeoff.ok) throw new RangeError(takeoff.error.message);
  const random = randomFrom(`check/${family.id}`);
  const rejections: Rejection[] = [];
  let good = 0;
  for (let draw = 0; draw < draws && good < enough; draw += 1) {
    const slate = slateWith(takeoff.value, drawGivens(family, random));
    const rejection = judgeDraw(family, slate);
    if (rejection) rejections.push(rejection);
    else good += 1;
  }
  if (good < enough) report(file, most(rejections), good);
}

function report(file: SourceFile, rejection: Rejection, good: number): void {
  if (rejection.kind === 'slip-is-right') {
    const path: Path = ['parts', rejection.part, 'slips', rejection.slip];
    const message = 'This slip leads to the right answer nearly always.';
    const cure = 'Draw givens for which it is wrong, or add: may-agree: true.';
    file.fault('SLIP_IS_RIGHT', keyAt(file, path), message, cure);
    return;
  }
  const [what, cure, path] = told(rejection);
  const message = `Of ${draws} draws ${good} make a good problem. ${what}`;
  file.fault('NO_INSTANCE', keyAt(file, path), message, cure);
}

function told(
  rejection: Exclude<Rejection, { readonly kind: 'slip-is-right' }>,
): readonly [string, string, Path] {
  switch (rejection.kind) {
    case 'makes-no-sense':
      return ['Most divide by zero.', 'Exclude this under "where".', ['parts']];
    case 'needs':
      return ['Most miss what it needs.', 'Draw other givens.', ['needs']];
    case 'where':
      return ['Most miss a condition.', 'Draw other givens, or ask for less.', ['where']];
    case 'hangs-on-rounding':
      return ['Most hang on a rounding.', 'Draw finer givens, or round to other steps.', ['parts']];
    case 'trivial':
      return [
        'The answer mostly needs no work.',
        'Draw other givens, or add: may-be-trivial: true.',
        ['parts', rejection.part],
      ];
  }
}

/** The most common of them, and of equals the first. */
function most(rejections: readonly Rejection[]): Rejection {
  const counts = new Map<string, number>();
  const keyOf = (each: Rejection): string => JSON.stringify(each);
  for (const each of rejections) counts.set(keyOf(each), (counts.get(keyOf(each)) ?? 0) + 1);
  const [first, ...others] = rejections as readonly [Rejection, ...Rejection[]];
  return others.reduce(
    (best, each) => (counts.get(keyOf(each))! > counts.get(keyOf(best))! ? each : best),
    first,
  );
}
