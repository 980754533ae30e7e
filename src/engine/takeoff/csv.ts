/**
 * Lines of comma-separated values as RFC 4180 writes them: they end in CR LF, and a quote within quotes
 * is doubled. What a spreadsheet would take for a formula gets an apostrophe before it, as OWASP advises
 * (https://owasp.org/www-community/attacks/CSV_Injection); a plain number stays one.
 */
export const csv = (rows: readonly (readonly string[])[]): string =>
  rows.map((cells) => `${cells.map(cell).join(',')}\r\n`).join('');

function cell(text: string): string {
  const isFormula = /^[=+\-@\t\r]/.test(text) && !/^-?\d+(\.\d+)?$/.test(text);
  const safe = isFormula ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
