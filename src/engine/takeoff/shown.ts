/** A formula on its way to its result, as it is shown: part of it still open, part already a value. */
import type { Text } from '#engine/text.ts';
import { inEach } from './fill-text.ts';
import type { Operation, Term } from './formula.ts';

export type Shown = Leaf | Open;

export type Leaf = {
  readonly text: Text;
  /** What is shown is rounded; the value is not. */
  readonly about: boolean;
};

export type Open = {
  readonly term: Term;
  readonly op: Operation;
  readonly args: readonly Shown[];
};

export const isLeaf = (shown: Shown): shown is Leaf => 'text' in shown;

/** Whether anything in it is shown rounded. */
export const isAbout = (shown: Shown): boolean =>
  isLeaf(shown) ? shown.about : shown.args.some(isAbout);

const ranks: Readonly<Record<Operation, number>> = {
  or: 1,
  and: 2,
  not: 3,
  less: 4,
  'at-most': 4,
  more: 4,
  'at-least': 4,
  equal: 4,
  different: 4,
  add: 5,
  subtract: 5,
  multiply: 6,
  divide: 6,
  negate: 7,
  power: 8,
  ceil: 9,
  floor: 9,
  round: 9,
  min: 9,
  max: 9,
  if: 9,
};

const between: Partial<Record<Operation, Text>> = {
  or: { en: 'or', es: 'o' },
  and: { en: 'and', es: 'y' },
  less: { en: '<', es: '<' },
  'at-most': { en: '≤', es: '≤' },
  more: { en: '>', es: '>' },
  'at-least': { en: '≥', es: '≥' },
  equal: { en: '=', es: '=' },
  different: { en: '≠', es: '≠' },
  add: { en: '+', es: '+' },
  subtract: { en: '−', es: '−' },
  multiply: { en: '×', es: '×' },
  divide: { en: '÷', es: '÷' },
};

const before: Partial<Record<Operation, Text>> = {
  ceil: { en: 'round up', es: 'redondear hacia arriba' },
  floor: { en: 'round down', es: 'redondear hacia abajo' },
  round: { en: 'round', es: 'redondear' },
  min: { en: 'the smaller of', es: 'el menor de' },
  max: { en: 'the larger of', es: 'el mayor de' },
  if: { en: 'if', es: 'si' },
};

const raised = ['', '', '²', '³', '⁴', '⁵', '⁶'];

/** In one line, with brackets where they are needed. */
export const lineOf = (shown: Shown): Text => inEach((language) => line(shown, language));

function line(shown: Shown, language: keyof Text): string {
  if (isLeaf(shown)) return shown.text[language];
  const { op, args } = shown;
  const [first, second] = args as readonly [Shown, Shown];
  const sign = between[op]?.[language];
  if (sign !== undefined) {
    const left = nested(first, ranks[op], language);
    return `${left} ${sign} ${nested(second, ranks[op] + (isOneSided(op) ? 1 : 0), language)}`;
  }
  if (op === 'negate') return `−${nested(first, ranks[op], language)}`;
  if (op === 'not') return `${language === 'es' ? 'no' : 'not'} ${nested(first, 9, language)}`;
  if (op === 'power') {
    const exponent = Number(line(second, language));
    const base = nested(first, ranks[op] + 1, language);
    // 1/2 in² would square the inch alone.
    const whole = isLeaf(first) && /[ "']/.test(base) ? `(${base})` : base;
    return `${whole}${raised[exponent] ?? `^${exponent}`}`;
  }
  return call(op, args, language);
}

function call(op: Operation, args: readonly Shown[], language: keyof Text): string {
  const name = before[op]?.[language] ?? op;
  const [first, ...others] = args.map((arg) => line(arg, language));
  if ((op === 'ceil' || op === 'floor' || op === 'round') && others.length > 0) {
    return `${name} (${first}) ${language === 'es' ? 'a múltiplos de' : 'to a multiple of'} ${others[0]}`;
  }
  return `${name} (${[first, ...others].join('; ')})`;
}

/** a − (b − c) keeps its brackets, and so does a ÷ (b × c). */
const isOneSided = (op: Operation): boolean => op === 'subtract' || op === 'divide';

function nested(shown: Shown, least: number, language: keyof Text): string {
  const text = line(shown, language);
  return !isLeaf(shown) && ranks[shown.op] < least ? `(${text})` : text;
}
