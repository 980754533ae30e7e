/** Rows as a file that can be read in again. */
import { csv } from '#engine/takeoff/csv.ts';
import { harmless } from './harmless.ts';

/** With the mark by which spreadsheets know UTF-8, and no cell that they would take for a formula. */
export const csvText = (
  headings: readonly string[],
  rows: readonly (readonly (string | null)[])[],
): string =>
  `\uFEFF${csv([headings, ...rows.map((cells) => cells.map((cell) => harmless(cell ?? '')))])}`;

export const csvAnswer = (text: string, fileName: string): Response =>
  new Response(text, {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': `attachment; filename="${fileName}"`,
    },
  });
