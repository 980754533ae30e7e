import { dimensionPhrase, type Dimension } from '#engine/measure/dimension.ts';
import { ofBaseUnits, type Quantity } from '#engine/measure/quantity.ts';
import type { DataSheet, FixedRule, SheetNumber } from '#engine/method/data-sheet.ts';
import type { NumberId } from '#engine/method/method.ts';
import { fixRule, judge, leastOf, middleOf } from '#engine/method/rule.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { enter, leave } from './base.ts';
import type { Exact } from './exact.ts';
import type { Family, Given, Part, Take } from './family.ts';
import { commonKind } from './formula-kinds.ts';
import type { Term, Value } from './formula.ts';
import { number, workOut, type Definitions, type Slate } from './slate.ts';
import { namesIn, termsOf } from './terms.ts';

/** A family of problems with the numbers of one data sheet. */
export type Takeoff = {
  readonly family: Family;
  readonly sheet: DataSheet;
  readonly definitions: Definitions;
  /** What the data sheet alone decides, each value at its term's place. */
  readonly known: readonly (Value | undefined)[];
};

export type TakeoffFault = {
  readonly code: 'UNKNOWN_NUMBER' | 'UNIT_MISMATCH';
  readonly number: NumberId;
  readonly message: string;
};

/** Puts a data sheet under a family; a sheet that lacks one of its numbers does not fit. */
export function takeoffOf(family: Family, sheet: DataSheet): Result<Takeoff, TakeoffFault> {
  for (const { number, kind } of numbersOf(family)) {
    const found = sheet.numbers.get(number);
    if (!found) {
      const message = `The data sheet "${sheet.id}" has no number "${number}".`;
      return fault({ code: 'UNKNOWN_NUMBER', number, message });
    }
    const { dimension } = sampleOf(found);
    if (!commonKind(dimension, kind)) {
      const message = `"${number}" is ${dimensionPhrase(dimension)} in the data sheet "${sheet.id}", not ${dimensionPhrase(kind)}.`;
      return fault({ code: 'UNIT_MISMATCH', number, message });
    }
  }
  const definitions = definitionsOf(family, sheet);
  const known = knownBySheet(family, definitions);
  return ok({ family, sheet, definitions, known });
}

/** A fresh slate: of the problem, nothing is known yet. */
export const slateOf = ({ definitions, known }: Takeoff): Slate => ({
  definitions,
  values: known.slice(),
  hangs: false,
});

function numbersOf({ sheetNumbers, givens }: Family) {
  return [
    ...sheetNumbers.map(({ number, term }) => ({ number, kind: term.kind as Dimension })),
    ...givens.flatMap(({ from, term }) =>
      from.kind === 'sheet' ? [{ number: from.number, kind: term.kind as Dimension }] : [],
    ),
  ];
}

const definitionsOf = (family: Family, sheet: DataSheet): Definitions => ({
  givens: new Map(family.givens.map((given) => [given.id, given])),
  parts: new Map(family.parts.map((part) => [part.id, part])),
  likeAnswer: new Map(family.parts.map((part) => [part.id, namesLike(part)])),
  sheetValue: (name) => enter(taken(sheet.numbers.get(name as NumberId)!, 'aim', new Map())),
  weathered: (given, slate) => weathered(sheet, given, slate),
});

const namesLike = ({ formula, term }: Part): readonly Term[] =>
  namesIn(formula).filter((name) => commonKind(name.kind, term.kind));

function weathered(sheet: DataSheet, { from }: Given, slate: Slate): Exact {
  if (from.kind !== 'sheet') throw new RangeError('This is no number of the data sheet.');
  const weather = new Map(
    [...from.at].map(([condition, { root }]) => [
      condition,
      leave(number(root, slate), root.kind as Dimension),
    ]),
  );
  return enter(taken(sheet.numbers.get(from.number)!, from.take, weather));
}

type Weather = Parameters<typeof fixRule>[1];

/** The value of a number that a take-off works with. */
export function taken({ rule, aim }: SheetNumber, take: Take, weather: Weather): Quantity {
  const fixed = fixRule(rule, weather);
  switch (take) {
    case 'aim':
      return aim && judge(fixed, aim).within ? aim : middleOf(fixed);
    case 'least':
      return leastOf(fixed);
    case 'most':
      return mostOf(fixed);
  }
}

function mostOf(rule: FixedRule): Quantity {
  switch (rule.kind) {
    case 'between':
      return rule.high;
    case 'about':
      return ofBaseUnits(rule.value.value.add(rule.within.value), rule.value.dimension);
    default:
      return rule.value;
  }
}

/** A value that tells of what dimension the number is. */
export const sampleOf = (number: SheetNumber): Quantity => taken(number, 'least', new Map());

/** Works out every term that no given or part enters; one that makes no sense alone is left open. */
function knownBySheet(family: Family, definitions: Definitions): readonly (Value | undefined)[] {
  const slate: Slate = {
    definitions,
    values: Array.from<Value | undefined>({ length: family.terms }),
    hangs: false,
  };
  const open = new Set<Term>();
  for (const term of termsOf(family)) {
    if (isOpen(term, definitions, open)) open.add(term);
    else {
      try {
        workOut(term, slate);
      } catch (error) {
        if (!(error instanceof RangeError)) throw error;
        open.add(term);
      }
    }
  }
  return slate.values;
}

function isOpen(term: Term, { givens }: Definitions, open: ReadonlySet<Term>): boolean {
  if (term.op === 'value' || term.op === 'sheet') return false;
  if (term.op === 'part') return true;
  if ('args' in term) return term.args.some((arg) => open.has(arg));
  const from = givens.get(term.name)?.from;
  return !(from?.kind === 'sheet' && from.at.size === 0);
}
