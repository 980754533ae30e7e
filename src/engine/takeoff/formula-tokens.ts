/**
 * Cuts a formula into its tokens, so that a place in it can be told: the parser of the library forgets
 * where its nodes stood. It also takes no sign that the language has not got, so that nothing else
 * ever reaches the parser. One pass, time in proportion to the length.
 */
import { fault, ok, type Result } from '#engine/result.ts';
import { deepestNesting, longestFormula, type FormulaFault, type Span } from './formula.ts';

export type Token = Span & {
  readonly kind: 'number' | 'quoted' | 'name' | 'word' | 'sign';
  readonly text: string;
};

/** These are signs, though they read like names. */
const words: ReadonlySet<string> = new Set(['and', 'or', 'not']);

/** What the parser takes for something else than a name. */
const taken: ReadonlySet<string> = new Set([
  ...['mod', 'to', 'in', 'xor', 'true', 'false', 'null', 'undefined'],
  ...['end', 'i', 'e'],
]);

const patterns = [
  ['number', /\d+(?:\.\d+)?|\.\d+/y],
  ['quoted', /"[^"\\]*"/y],
  ['name', /[a-z][a-z0-9]*(?:-[a-z0-9]+)*/y],
  ['sign', /<=|>=|==|!=|[-+*/^<>(),]/y],
] as const;

export const syntaxFault = (span: Span, message: string, cure: string): FormulaFault => ({
  code: 'FORMULA_SYNTAX',
  message,
  cure,
  ...span,
});

export function tokensOf(text: string): Result<readonly Token[], FormulaFault> {
  if (text.length > longestFormula) {
    const span = { at: longestFormula, end: text.length };
    const message = `A formula has at most ${longestFormula} characters.`;
    return fault({ ...span, code: 'FORMULA_TOO_COSTLY', message, cure: shorten });
  }
  const tokens: Token[] = [];
  let open = 0;
  for (let at = skipBlanks(text, 0); at < text.length;) {
    const token = tokenAt(text, at);
    if (!token.ok) return token;
    open += token.value.text === '(' ? 1 : token.value.text === ')' ? -1 : 0;
    if (open > deepestNesting) {
      const message = `Brackets nest at most ${deepestNesting} deep.`;
      return fault({ ...token.value, code: 'FORMULA_TOO_COSTLY', message, cure: shorten });
    }
    tokens.push(token.value);
    at = skipBlanks(text, token.value.end);
  }
  if (tokens.length > 0) return ok(tokens);
  const span = { at: 0, end: text.length };
  return fault(syntaxFault(span, 'There is no formula here.', 'Write one, such as run / 2.'));
}

export const shorten = 'Split it: give a part of it a name as a computed given.';

function tokenAt(text: string, at: number): Result<Token, FormulaFault> {
  for (const [kind, pattern] of patterns) {
    pattern.lastIndex = at;
    const found = pattern.exec(text)?.[0];
    if (found === undefined) continue;
    const end = at + found.length;
    const token = { kind: words.has(found) ? ('word' as const) : kind, text: found, at, end };
    return refusal(token, text.charAt(end)) ?? ok(token);
  }
  const found = text.charAt(at);
  const cure =
    found === '"'
      ? 'Close the quotes: a quantity is written "2 in".'
      : 'Write only + - * / ^ ( ) , comparisons, numbers, quantities in quotes, and names in small letters.';
  return fault(syntaxFault({ at, end: at + 1 }, `“${found}” has no meaning in a formula.`, cure));
}

function refusal(token: Token, next: string): Result<never, FormulaFault> | undefined {
  if (token.kind === 'number' && /[\w.]/.test(next)) {
    const message = `“${token.text}${next}” is no number.`;
    const cure = 'Write a number in digits; a unit goes in quotes, as in "2 in"; * multiplies.';
    return fault(syntaxFault(token, message, cure));
  }
  if (token.kind === 'name' && /[\w"]/.test(next)) {
    const message = `“${token.text}${next}” is no name.`;
    return fault(syntaxFault(token, message, 'Write names in small letters: seam-lap.'));
  }
  if (token.kind === 'name' && taken.has(token.text)) {
    const message = `“${token.text}” cannot be a name in a formula.`;
    return fault(syntaxFault(token, message, 'Use another name.'));
  }
  return undefined;
}

const skipBlanks = (text: string, at: number): number => {
  const blanks = /[ \t\n]*/y;
  blanks.lastIndex = at;
  return at + (blanks.exec(text)?.[0].length ?? 0);
};
