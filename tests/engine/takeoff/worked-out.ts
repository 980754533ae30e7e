import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { enter } from '#engine/takeoff/base.ts';
import type { Formula, FormulaFault, Term, Value } from '#engine/takeoff/formula.ts';
import { amount, type Amount } from '#engine/takeoff/instance.ts';
import { parseFormula } from '#engine/takeoff/parse-formula.ts';
import { resolveFormula, type Terms } from '#engine/takeoff/resolve-formula.ts';
import { workOut, type Slate } from '#engine/takeoff/slate.ts';
import { fault, ok, type Result } from '#engine/result.ts';

export const q = (text: string): Quantity => {
  const read = parseQuantity(text);
  if (!read.ok) throw new Error(`${text}: ${read.error.message.en}`);
  return read.value;
};

/** What names stand for: quantities as the trade writes them, or true or false. */
export type Worth = Readonly<Record<string, string | boolean>>;

const amountOf = (worth: string | boolean): Amount =>
  typeof worth === 'boolean' ? worth : q(worth);

export function formulaOf(
  text: string,
  worth: Worth = {},
): Result<Formula, readonly FormulaFault[]> {
  const parsed = parseFormula(text);
  if (!parsed.ok) return fault([parsed.error]);
  const terms: Terms = new Map();
  const resolved = resolveFormula(
    text,
    parsed.value,
    (name) => {
      if (!Object.hasOwn(worth, name)) return undefined;
      const value = amountOf(worth[name]!);
      const kind = typeof value === 'boolean' ? 'truth' : value.dimension;
      return { origin: 'given', kind, bits: 256 };
    },
    terms,
  );
  return resolved.ok ? ok(resolved.value.formula) : resolved;
}

/** A slate on which nothing is known but what these names stand for. */
export function slateFor(root: Term, worth: Worth): Slate {
  const values: (Value | undefined)[] = [];
  const visit = (term: Term): void => {
    if ('args' in term) term.args.forEach(visit);
    else if (term.op === 'given') {
      const value = amountOf(worth[term.name]!);
      values[term.place] = typeof value === 'boolean' ? value : enter(value);
    }
  };
  visit(root);
  const none = () => {
    throw new Error('There is no data sheet here.');
  };
  return {
    definitions: {
      givens: new Map(),
      parts: new Map(),
      likeAnswer: new Map(),
      sheetValue: none,
      weathered: none,
    },
    values,
    hangs: false,
  };
}

/** The value of a formula, which must be right. */
export function value(text: string, worth: Worth = {}): Amount {
  const formula = formulaOf(text, worth);
  if (!formula.ok) throw new Error(`${text}: ${formula.error[0]?.message}`);
  const { root } = formula.value;
  return amount(workOut(root, slateFor(root, worth)), root.kind);
}

/** In base units, exactly, for comparing. */
export const exactly = (amount: Amount): string =>
  typeof amount === 'boolean'
    ? String(amount)
    : `${amount.value.s * amount.value.n}/${amount.value.d} ${JSON.stringify(amount.dimension.powers)}`;

export const same = (text: string): string => exactly(q(text));
