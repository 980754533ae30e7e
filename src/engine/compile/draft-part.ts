import type { Dimension } from '#engine/measure/dimension.ts';
import type { Answered, Part, PartId, RoundRule, Slip, SlipId } from '#engine/takeoff/family.ts';
import { commonKind, kindPhrase } from '#engine/takeoff/formula-kinds.ts';
import type { Kind } from '#engine/takeoff/formula.ts';
import { declare, type Names } from './draft-names.ts';
import { styleFor } from './draft-style.ts';
import type { WrittenPart, WrittenRound, WrittenSlip } from './family.ts';
import { placeOfAll, resolved } from './formula.ts';
import { isOfDimension } from './quantity.ts';
import { missingKey } from './reader.ts';
import { keyAt, type Path } from './source-file.ts';

/** A part, which later ones may name even where it has a fault. */
export function draftPart(names: Names, id: string, written: WrittenPart): Part | null {
  const path = ['parts', id];
  const found = written.answer ? resolved(names, written.answer) : null;
  const kind = found?.formula.root.kind;
  const answer = kind && answered(names, path, written, kind);
  const slips = written.slips.map(([slip, each]) =>
    draftSlip(names, [...path, 'slips', slip], slip, each, kind, answer),
  );
  const shown = written.shown.map((style, place) =>
    styleFor(names.file, [...path, 'shown', place], style, undefined),
  );
  const known = found && { kind: found.formula.root.kind, bits: found.bits };
  const term = declare(names, path, id, 'part', known);
  const sound = slips.filter((slip) => slip !== null);
  const styles = shown.filter((style) => style !== null);
  if (!found || !term || !answer || sound.length < slips.length) return null;
  if (styles.length < shown.length) return null;
  return {
    id: id as PartId,
    name: written.name,
    ask: written.ask,
    term,
    formula: found.formula,
    answer,
    why: written.why,
    slips: sound,
    shown: styles,
    mayBeTrivial: written['may-be-trivial'],
  };
}

function answered(names: Names, path: Path, written: WrittenPart, kind: Kind): Answered | null {
  return kind === 'truth' ? decision(names, path, written) : quantity(names, path, written, kind);
}

function decision({ file }: Names, path: Path, { yes, no, unit }: WrittenPart): Answered | null {
  if (yes === undefined) missingKey(file, keyAt(file, path), 'yes');
  if (no === undefined) missingKey(file, keyAt(file, path), 'no');
  if (unit !== undefined) {
    const message = 'The answer is yes or no, and has no unit.';
    file.fault('UNIT_MISMATCH', keyAt(file, [...path, 'unit']), message, 'Leave the unit out.');
    return null;
  }
  return yes && no ? { kind: 'decision', yes, no } : null;
}

function quantity(
  names: Names,
  path: Path,
  { unit, called, round }: WrittenPart,
  kind: Dimension,
): Answered | null {
  const { file } = names;
  if (unit === undefined && called === undefined) {
    missingKey(file, keyAt(file, path), 'unit');
    return null;
  }
  const style = styleFor(
    file,
    [...path, unit === undefined ? 'called' : 'unit'],
    unit ?? '1',
    kind,
  );
  const rule = round && rounding(names, [...path, 'round'], round, kind);
  return style === null || rule === null ? null : { kind: 'quantity', style, called, round: rule };
}

function rounding(
  { file }: Names,
  path: Path,
  written: WrittenRound,
  kind: Dimension,
): RoundRule | null {
  const stated = (['up', 'down', 'nearest'] as const).filter((key) => written[key] !== undefined);
  const [how] = stated;
  if (how === undefined || stated.length > 1) {
    const message = 'Rounding goes one way.';
    file.fault('WRONG_SHAPE', keyAt(file, path), message, 'Write one of up, down, nearest.');
    return null;
  }
  const to = written[how];
  if (!to || !isOfDimension(file, [...path, how], to, kind)) return null;
  if (to.value.gt(0n)) return { how, to };
  const message = 'Nothing rounds to steps of nothing or less.';
  file.fault('EMPTY_RANGE', keyAt(file, [...path, how]), message, 'Write a step above 0.');
  return null;
}

function draftSlip(
  names: Names,
  path: Path,
  id: string,
  { answer, round, tell, 'may-agree': mayAgree }: WrittenSlip,
  kind: Kind | undefined,
  right: Answered | null | undefined,
): Slip | null {
  const found = answer ? resolved(names, answer) : null;
  if (!answer || !found || !kind) return null;
  const { formula } = found;
  if (!commonKind(formula.root.kind, kind)) {
    const message = `This is ${kindPhrase(formula.root.kind)}, and the answer is ${kindPhrase(kind)}.`;
    const cure = 'A slip leads to a wrong answer of the right kind.';
    names.file.fault('UNIT_MISMATCH', placeOfAll(answer), message, cure);
    return null;
  }
  const own =
    round && kind !== 'truth' ? rounding(names, [...path, 'round'], round, kind) : undefined;
  const asPart = right?.kind === 'quantity' ? right.round : undefined;
  return own === null ? null : { id: id as SlipId, formula, round: own ?? asPart, tell, mayAgree };
}
