import type { Quantity } from '#engine/measure/quantity.ts';
import type { Entry, Rule, SheetNumber } from '#engine/method/data-sheet.ts';
import type { NumberId, SourceId } from '#engine/method/method.ts';
import { judge } from '#engine/method/rule.ts';
import { entryFrom, writtenEntry } from './entry.ts';
import { offersRight } from './offer.ts';
import { anyQuantity, areAlike } from './quantity.ts';
import { record } from './group.ts';
import { missingKey, optional, type Reader } from './reader.ts';
import { ruleFields, ruleFrom, sampleOf } from './rule.ts';
import { keyAt, placeAt, type Path, type SourceFile } from './source-file.ts';
import { idOf, text } from './words.ts';

/** A number as written: where the sheet starts from another one, everything may be left to that. */
export const writtenNumber = record({
  ...ruleFields,
  name: optional(text, undefined),
  because: optional(text, undefined),
  source: optional(idOf<SourceId>('source'), undefined),
  aim: optional(anyQuantity, undefined),
  entry: optional(writtenEntry, undefined),
});

export type WrittenNumber = typeof writtenNumber extends Reader<infer T> ? T : never;

/** The same number in the sheet that this one starts from: none, or one that could not be read. */
export type Base = SheetNumber | null | undefined;

/**
 * What a sheet says of a number, on top of what its base says. A rule of its own takes the place of
 * the base's rule, aim and source: the other source says nothing about this value.
 */
export function numberFrom(
  file: SourceFile,
  id: NumberId,
  written: WrittenNumber,
  base: Base,
): SheetNumber | null {
  const path = ['numbers', id];
  const stated = ruleFrom(file, path, written);
  const rule = stated === undefined ? base?.rule : stated;
  const source = written.source ?? (stated === undefined ? base?.source : undefined);
  const name = written.name ?? base?.name;
  const because = written.because ?? base?.because;

  const isAlone = base === undefined;
  if (rule === undefined && isAlone) noRule(file, path);
  if (source === undefined && (isAlone || stated !== undefined)) uncited(file, path);
  if (name === undefined && isAlone) missingKey(file, keyAt(file, path), 'name');
  if (because === undefined && isAlone) missingKey(file, keyAt(file, path), 'because');
  if (!rule) return null;

  const { path: inNumber, quantity: sample } = sampleOf(rule);
  const isSameKind =
    !base || areAlike(file, [...path, ...inNumber], sample, sampleOf(base.rule).quantity);
  if (!isSameKind) return null;
  const aim = written.aim ?? (stated === undefined ? base?.aim : undefined);
  const entry = written.entry
    ? entryFrom(file, [...path, 'entry'], written.entry, sample)
    : base?.entry;
  if (written.aim) checkAim(file, path, rule, written.aim);
  if (entry) checkOffer(file, path, rule, entry);
  if (!name || !because || source === undefined) return null;
  return {
    id,
    name,
    dimension: sample.dimension.name,
    rule,
    aim: aim ?? undefined,
    entry,
    because,
    source,
  };
}

const noRule = (file: SourceFile, path: Path): void =>
  file.fault(
    'NO_RULE',
    keyAt(file, path),
    'Nothing says which values are right.',
    'Add one of: exactly, at-least, at-most, between, about with within, by with rows.',
  );

const uncited = (file: SourceFile, path: Path): void =>
  file.fault(
    'UNCITED_NUMBER',
    keyAt(file, path),
    'Nothing says where this number comes from.',
    'Add "source:" with an id of sources.yaml; "common-practice" where nobody published it.',
  );

function checkAim(file: SourceFile, path: Path, rule: Rule, aim: Quantity): void {
  if (!areAlike(file, [...path, 'aim'], aim, sampleOf(rule).quantity)) return;
  if (rule.kind === 'by' || judge(rule, aim).within) return;
  file.fault(
    'WRONG_AIM',
    placeAt(file, [...path, 'aim']),
    'The aim breaks the rule of its own number.',
    'Aim at a value that is right.',
  );
}

function checkOffer(file: SourceFile, path: Path, rule: Rule, entry: Entry): void {
  if (offersRight(rule, entry)) return;
  file.fault(
    'NO_RIGHT_ENTRY',
    keyAt(file, [...path, 'entry']),
    'None of the values that a learner can set is right.',
    entry.kind === 'one-of'
      ? 'Add a right value to the list.'
      : 'Widen the range, or choose steps that meet a right value.',
  );
}
