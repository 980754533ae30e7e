/** A text as it was written, and in plain characters, position for position. */
export interface Written {
  readonly text: string;
  readonly plain: string;
}

const twins: ReadonlyMap<string, string> = new Map(
  Object.entries({ "'": '’‘‛′´ʹ', '"': '”“‟″ʺ', '-': '−–‐‑', '/': '⁄∕', '°': 'º˚', '·': '⋅×•' })
    .map(([plain, marks]) => Array.from(marks, (mark) => [mark, plain] as const))
    .flat(),
);

/**
 * Telephones turn ' and " into typographic marks, Spanish keyboards offer º for °, and accents come
 * and go. Each character becomes its plain twin, so that one grammar reads them all; none is added
 * or taken away, so that a position in `plain` is one in `text`.
 */
export const written = (text: string): Written => ({
  text,
  plain: text
    .replace(/[^\0-\x7f]/g, (mark) => twins.get(mark) ?? mark.normalize('NFD').charAt(0))
    .toLowerCase(),
});

/** Where `pattern`, which has to be sticky, matches at that place. */
export const matchAt = (pattern: RegExp, text: string, at: number): RegExpExecArray | undefined => {
  pattern.lastIndex = at;
  return pattern.exec(text) ?? undefined;
};

/** What stands there, cut to a length that fits a message. */
export const excerpt = ({ text }: Written, at: number, end: number): string => {
  const found = text.slice(at, end).trim();
  return found.length > 24 ? `${found.slice(0, 23)}…` : found;
};

/** The first place from `at` on that is not a space. */
export const skipSpaces = (text: string, at: number): number =>
  at + (matchAt(/\s*/y, text, at)?.[0].length ?? 0);
