/** The board as a spreadsheet reads it: a row a person, a state and a last day for each qualification. */
import { csv } from '#engine/takeoff/csv.ts';
import { holdingStates } from '#engine/competence/qualification-state.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import type { Language } from '#engine/text.ts';
import type { Db } from '../database/open-database.ts';
import { type Asked, type BoardRow, page } from './board.ts';

const atOnce = 2000;

const headings = {
  en: ['name', 'number', 'crew', 'last day', 'last practised'],
  es: ['nombre', 'número', 'cuadrilla', 'último día', 'última práctica'],
} as const;

/** Everybody whom the board would show, page after page. States are the words of the format, not of a language. */
export async function boardCsv(
  db: Db,
  company: string,
  at: string,
  schemes: readonly Scheme[],
  asked: Asked,
  language: Language,
): Promise<string> {
  const [name, number, crew, until, practised] = headings[language];
  const rows: string[][] = [
    [
      name,
      number,
      crew,
      ...schemes.flatMap(({ title }) => {
        const of = title[language];
        return [of, `${of}: ${until}`, `${of}: ${practised}`];
      }),
    ],
  ];
  for (let after: string | undefined, more = true; more; more = after !== undefined) {
    const found = await page(db, company, at, schemes, { ...asked, most: atOnce, after });
    rows.push(...found.rows.map(rowOf));
    after = found.next;
  }
  return csv(rows);
}

const rowOf = ({ name, number, crewName, cells }: BoardRow): string[] => [
  name,
  number ?? '',
  crewName ?? '',
  ...cells.flatMap(({ state, certificate, fade }) => {
    const isHeld = (holdingStates as readonly string[]).includes(state);
    return [state, isHeld ? certificate!.validUntil : '', fade.last ?? ''];
  }),
];
