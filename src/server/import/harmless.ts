/**
 * Cells that a spreadsheet would take for a formula get an apostrophe before them, as OWASP advises
 * (https://owasp.org/www-community/attacks/CSV_Injection). Cells that look as if they had got one get
 * another, so that taking one off always gives back what was there.
 */
const likeFormula = /^'*[=+\-@\t\r]/;

export const harmless = (cell: string): string => (likeFormula.test(cell) ? `'${cell}` : cell);

export const asWritten = (cell: string): string =>
  cell.startsWith("'") && likeFormula.test(cell) ? cell.slice(1) : cell;
