/**
 * Where a text stops being JSON (RFC 8259, 2017), and what should stand there. One pass, a token at a
 * time; asked only of texts that the platform's parser refused, as that does not always say where.
 */
export type JsonPlace = {
  readonly line: number;
  readonly column: number;
  readonly expected: string;
};

const token =
  /[ \t\n\r]*(?:([{}[\],:])|("(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*")|(-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![\w.+-]))/y;

type State = 'value' | 'first value' | 'first name' | 'name' | 'colon' | 'next' | 'end';

const expected: Readonly<Record<State, string>> = {
  value: 'a value',
  'first value': 'a value or ]',
  'first name': 'a name in double quotes or }',
  name: 'a name in double quotes',
  colon: 'a colon',
  next: 'a comma or a closing bracket',
  end: 'nothing more',
};

function placeAt(text: string, index: number, state: State): JsonPlace {
  const blank = /[ \t\n\r]*/y;
  blank.lastIndex = index;
  const before = text.slice(0, index + (blank.exec(text)?.[0].length ?? 0)).split('\n');
  return {
    line: before.length,
    column: (before.at(-1)?.length ?? 0) + 1,
    expected: expected[state],
  };
}

/** Undefined for a text that is JSON. Lines and columns count from 1, columns in UTF-16 units. */
export function whereNotJson(text: string): JsonPlace | undefined {
  const open: ('{' | '[')[] = [];
  let state: State = 'value';
  let at = 0;
  const after = (): State => (open.length === 0 ? 'end' : 'next');
  while (state !== 'end' || /\S/.test(text.slice(at))) {
    token.lastIndex = at;
    const [all = '', mark, string, plain] = token.exec(text) ?? [];
    const next = stateAfter(state, open, { mark, isString: string !== undefined, plain }, after);
    if (all === '' || next === undefined) return placeAt(text, at, state);
    state = next;
    at += all.length;
  }
  return undefined;
}

type Token = {
  readonly mark: string | undefined;
  readonly isString: boolean;
  readonly plain: string | undefined;
};

function stateAfter(
  state: State,
  open: ('{' | '[')[],
  { mark, isString, plain }: Token,
  after: () => State,
): State | undefined {
  if (state === 'value' || state === 'first value') {
    if (isString || plain !== undefined) return after();
    if (mark === '{' || mark === '[') {
      open.push(mark);
      return mark === '{' ? 'first name' : 'first value';
    }
  }
  if (state === 'name' || state === 'first name') {
    if (isString) return 'colon';
  }
  if (state === 'colon' && mark === ':') return 'value';
  if (state === 'next' && mark === ',') return open.at(-1) === '{' ? 'name' : 'value';
  const closes = mark === '}' ? '{' : mark === ']' ? '[' : undefined;
  const mayClose = state === 'next' || state === 'first name' || state === 'first value';
  if (mayClose && closes !== undefined && open.at(-1) === closes) {
    open.pop();
    return after();
  }
  return undefined;
}
