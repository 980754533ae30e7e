/**
 * Reads the text of a formula. The grammar is that of math.js, of which only the parser is loaded and
 * nothing is ever evaluated: its tree is copied node by node into ours, and a node that the language
 * has not got is refused. Only the compiler of content imports this file; what it makes is plain data.
 *
 * A name is written as ids are, `seam-lap`, so a minus sign stands between spaces. Numbers are taken
 * from the text, never from the parser, which would make floats of them: 0.1 is a tenth.
 */
import { create, parseDependencies, type MathNode } from 'mathjs/number';
import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { FormulaFault, Operation, Parsed, Span } from './formula.ts';
import { calls, mostTerms } from './formula.ts';
import { shorten, syntaxFault, tokensOf, type Token } from './formula-tokens.ts';

const { parse } = create({ parseDependencies } as Parameters<typeof create>[0]);

// The hook that the library documents for its alphabet. The parser is this file's own.
Object.assign(parse, {
  isAlpha: (c: string, before: string, after: string): boolean =>
    /^[a-z]$/.test(c) || (c === '-' && /^[a-z0-9]$/.test(before) && /^[a-z0-9]$/.test(after)),
});

/** By the parser's name for the sign. */
const operations: ReadonlyMap<string, Operation> = new Map([
  ['add', 'add'],
  ['subtract', 'subtract'],
  ['multiply', 'multiply'],
  ['divide', 'divide'],
  ['pow', 'power'],
  ['unaryMinus', 'negate'],
  ['smaller', 'less'],
  ['smallerEq', 'at-most'],
  ['larger', 'more'],
  ['largerEq', 'at-least'],
  ['equal', 'equal'],
  ['unequal', 'different'],
  ['and', 'and'],
  ['or', 'or'],
  ['not', 'not'],
]);

/** Thrown and caught in this file only. */
class Refusal extends Error {
  readonly fault: FormulaFault;

  constructor(fault: FormulaFault) {
    super(fault.message);
    this.fault = fault;
  }
}

export function parseFormula(text: string): Result<Parsed, FormulaFault> {
  const tokens = tokensOf(text);
  if (!tokens.ok) return tokens;
  try {
    const leaves = tokens.value.filter(({ kind }) => !['sign', 'word'].includes(kind));
    return ok(new Copy(text, leaves).of(parse(text)));
  } catch (error) {
    if (error instanceof Refusal) return fault(error.fault);
    return fault(asFault(error, text));
  }
}

function asFault(error: unknown, text: string): FormulaFault {
  const { message, char } = error as { readonly message: string; readonly char?: number };
  if (error instanceof RangeError) {
    const span = { at: 0, end: text.length };
    return { ...span, code: 'FORMULA_TOO_COSTLY', message: 'It nests too deep.', cure: shorten };
  }
  const at = Math.min(text.length - 1, Math.max(0, (char ?? 1) - 1));
  const what = message.replace(/ \(char \d+\)$/, '');
  const cure = 'Mend it here: brackets in pairs, a sign between two values, spaces around a minus.';
  return syntaxFault({ at, end: at + 1 }, `${what}.`, cure);
}

/** Copies one tree. Its leaves come in the order of the text, so each is the next token. */
class Copy {
  private readonly text: string;
  private readonly leaves: readonly Token[];
  private next = 0;
  private terms = 0;

  constructor(text: string, leaves: readonly Token[]) {
    this.text = text;
    this.leaves = leaves;
  }

  of(node: MathNode): Parsed {
    this.terms += 1;
    if (this.terms > mostTerms) {
      const span = { at: 0, end: this.text.length };
      const message = `A formula has at most ${mostTerms} values and signs.`;
      throw new Refusal({ ...span, code: 'FORMULA_TOO_COSTLY', message, cure: shorten });
    }
    switch (node.type) {
      case 'ParenthesisNode':
        return this.inBrackets(this.of((node as unknown as { content: MathNode }).content));
      case 'ConstantNode':
      case 'SymbolNode':
        return this.leaf();
      case 'OperatorNode':
        return this.operation(node as unknown as OperatorNode);
      case 'FunctionNode':
        return this.call(node as unknown as FunctionNode);
      default:
        return this.refuse();
    }
  }

  private leaf(): Parsed {
    const token = this.leaves[this.next];
    if (!token) return this.refuse();
    this.next += 1;
    const span = { at: token.at, end: token.end };
    if (token.kind === 'name') return { op: 'name', name: token.text, ...span };
    const written = token.kind === 'quoted' ? token.text.slice(1, -1) : token.text;
    const value = parseQuantity(written);
    if (value.ok) return { op: 'value', value: value.value, written, ...span };
    const { message, at, length } = value.error;
    const from = span.at + (token.kind === 'quoted' ? 1 : 0) + at;
    const [what = message.en, ...cure] = message.en.split(/(?<=\.) (?=[A-Z])/);
    throw new Refusal({
      code: 'BAD_QUANTITY',
      message: what,
      cure: cure.join(' ') || 'Write a number and its unit in quotes: "2 in".',
      at: from,
      end: Math.min(span.end, from + Math.max(1, length)),
    });
  }

  private operation({ fn, args, implicit, isPercentage }: OperatorNode): Parsed {
    const op = operations.get(fn);
    const from = this.leaves[this.next];
    const parts = args.map((arg) => this.of(arg));
    const [first, last] = [parts[0], parts.at(-1)];
    if (op === undefined || isPercentage || !first || !last) return this.refuse(from);
    const span = { at: first.at, end: last.end };
    if (implicit) {
      const message = 'A sign is missing between these two.';
      throw new Refusal(syntaxFault(span, message, 'Write * to multiply; a unit goes in quotes.'));
    }
    const before = op === 'negate' ? '-' : op === 'not' ? 'not' : '';
    const at = before === '' ? span.at : this.text.lastIndexOf(before, span.at);
    return { op, args: parts, at: Math.max(0, at), end: span.end };
  }

  private call({ fn, args }: FunctionNode): Parsed {
    const token = this.leaves[this.next];
    if (!token || token.kind !== 'name' || fn.type !== 'SymbolNode') return this.refuse();
    this.next += 1;
    const op = calls.find((known) => known === token.text);
    if (op === undefined) {
      throw new Refusal({
        code: 'UNKNOWN_FUNCTION',
        message: `There is no function “${token.text}”.`,
        cure: `Write one of: ${calls.join(', ')}.`,
        at: token.at,
        end: token.end,
      });
    }
    const parts = args.map((arg) => this.of(arg));
    const end = this.text.indexOf(')', parts.at(-1)?.end ?? token.end) + 1;
    return { op, args: parts, at: token.at, end: end || token.end };
  }

  private inBrackets(content: Parsed): Parsed {
    const at = this.text.lastIndexOf('(', content.at - 1);
    const end = this.text.indexOf(')', content.end) + 1;
    return at < 0 || end === 0 ? content : { ...content, at, end };
  }

  private refuse(from: Span | undefined = this.leaves[this.next] ?? this.leaves.at(-1)): never {
    const span = { at: from?.at ?? 0, end: from?.end ?? this.text.length };
    const message = 'This is not part of the language of formulas.';
    const cure = 'Use signs, comparisons joined by “and”, and the functions of content/README.md.';
    throw new Refusal(syntaxFault(span, message, cure));
  }
}

type OperatorNode = {
  readonly fn: string;
  readonly args: readonly MathNode[];
  readonly implicit: boolean;
  readonly isPercentage: boolean;
};

type FunctionNode = { readonly fn: MathNode; readonly args: readonly MathNode[] };
