/** The columns of a kind of file, by the names that offices write over them in either language. */
import type { Language } from '#engine/text.ts';
import { folded } from '../people/folded.ts';

/** The first of each is what an export writes. */
export type Headings<Column extends string> = Readonly<
  Record<Column, Readonly<Record<Language, readonly string[]>>>
>;

export type Columns<Column extends string> = {
  readonly headingOf: (column: Column, language: Language) => string;
  /** Which column a heading names; undefined where it names none that is read. */
  readonly columnOf: (heading: string) => Column | undefined;
};

export function headed<Column extends string>(headings: Headings<Column>): Columns<Column> {
  const known = new Map<string, Column>();
  for (const column of Object.keys(headings) as Column[]) {
    const { en, es } = headings[column];
    for (const heading of [...en, ...es]) known.set(folded(heading), column);
  }
  return {
    headingOf: (column, language) => headings[column][language][0]!,
    columnOf: (heading) => known.get(folded(heading)),
  };
}
