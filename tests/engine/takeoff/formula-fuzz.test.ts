import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mostBits } from '#engine/takeoff/formula.ts';
import { parseFormula } from '#engine/takeoff/parse-formula.ts';
import { workOut } from '#engine/takeoff/slate.ts';
import { formulaOf, slateFor, type Worth } from './worked-out.ts';

const worth: Worth = { run: '60 ft', n: '3', steel: true };

const scraps = [
  ...['run', 'n', 'steel', 'constructor', '__proto__', 'prototype', 'toString', 'this', 'process'],
  ...[
    'import',
    'evaluate',
    'parse',
    'createUnit',
    'simplify',
    'ans',
    'end',
    'i',
    'e',
    'pi',
    'Infinity',
  ],
  ...[
    'true',
    'null',
    'undefined',
    'NaN',
    'ceil',
    'round',
    'if',
    'and',
    'or',
    'not',
    'to',
    'in',
    'mod',
  ],
  ...[
    '+',
    '-',
    '*',
    '/',
    '^',
    '(',
    ')',
    ',',
    '=',
    '==',
    '<',
    '>=',
    '!=',
    ';',
    ':',
    '?',
    '??',
    '?.',
  ],
  ...[
    '[',
    ']',
    '{',
    '}',
    '.',
    '%',
    '!',
    "'",
    '"',
    '\\',
    '#',
    '\n',
    ' ',
    '&',
    '|',
    '~',
    '=>',
    '`',
    '$',
  ],
  ...['"2 in"', '"', '1e999', '0x1f', '1_000', '9'.repeat(50), '٣', '½', '\u0000', '\u202e', '🧱'],
];

const written = fc.oneof(
  fc.array(fc.constantFrom(...scraps), { maxLength: 40 }).map((parts) => parts.join('')),
  fc.array(fc.constantFrom(...scraps), { maxLength: 40 }).map((parts) => parts.join(' ')),
  fc.string({ unit: 'binary', maxLength: 80 }),
  fc.string({ unit: 'grapheme-ascii', maxLength: 80 }),
);

const plainData = (node: unknown): boolean => {
  if (typeof node !== 'object' || node === null) return typeof node !== 'function';
  const prototype: unknown = Object.getPrototypeOf(node);
  const isFraction = 'n' in node && 'd' in node && 's' in node;
  return (
    (isFraction || prototype === Object.prototype || prototype === Array.prototype) &&
    (isFraction || Object.values(node).every(plainData))
  );
};

describe('whatever is written', () => {
  it('is a formula of plain data or a fault with a place in it, and never throws', () => {
    fc.assert(
      fc.property(written, (text) => {
        const parsed = parseFormula(text);
        if (parsed.ok) expect(plainData(parsed.value)).toBe(true);
        else {
          const { at, end, message, cure } = parsed.error;
          expect(at).toBeGreaterThanOrEqual(0);
          expect(end).toBeLessThanOrEqual(Math.max(text.length, at + 1));
          expect(at).toBeLessThanOrEqual(end);
          expect(message).toMatch(/\S/);
          expect(cure).toMatch(/\.$/);
        }
      }),
      { numRuns: 20_000, seed: 1 },
    );
  });

  it('works out to a bounded number or makes no sense, and changes nothing outside', () => {
    const before = [Object.keys(Object.prototype), Object.keys(globalThis)].map(
      (keys) => keys.length,
    );
    let workedOut = 0;
    fc.assert(
      fc.property(written, (text) => {
        const formula = formulaOf(text, worth);
        if (!formula.ok) return;
        try {
          const value = workOut(formula.value.root, slateFor(formula.value.root, worth));
          workedOut += 1;
          if (typeof value === 'boolean') return;
          expect(value.n.toString(2).length + value.d.toString(2).length).toBeLessThan(mostBits);
        } catch (error) {
          expect(error).toBeInstanceOf(RangeError);
        }
      }),
      { numRuns: 20_000, seed: 2 },
    );
    expect(workedOut).toBeGreaterThan(50);
    const after = [Object.keys(Object.prototype), Object.keys(globalThis)].map(
      (keys) => keys.length,
    );
    expect(after).toEqual(before);
  });

  it.each([
    'constructor',
    'constructor.constructor("return 1")()',
    'constructor("return process")',
    'run.constructor',
    'run["constructor"]',
    '__proto__',
    'toString()',
    'f(x) = x',
    'run = 1',
    'a = constructor',
    '[1, 2][1]',
    '{a: 1}.a',
    '1:10^9',
    'map([1, 2], f)',
    'import({a: 1})',
    'evaluate("1 + 1")',
    'createUnit("brick")',
    'parse("1")',
    '"text" + 1',
    '"\\u0031"',
    '`1`',
    'n!',
    'n?.a',
    'run to in',
    '9^9^9^9',
    '2^1000000',
    '10^(10^10)',
  ])('%s gets nowhere', (text) => {
    expect(formulaOf(text, worth).ok).toBe(false);
  });

  it('even the worst formula that is let through takes a moment only', () => {
    const large: Worth = { n: `${'9'.repeat(60)}/7` };
    const worst = Array(16).fill('(n / 7)^6').join(' * ');
    const formula = formulaOf(worst, large);
    if (!formula.ok) throw new Error(formula.error[0]?.message);
    const { root } = formula.value;
    const start = performance.now();
    workOut(root, slateFor(root, large));
    expect(performance.now() - start).toBeLessThan(1000);
  });
});
