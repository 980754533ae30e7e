/**
 * The pages that need nothing but kept content: they open from the kept shell, with or without signal.
 * All others are asked of the server.
 */
export const keptSections = [
  'practise',
  'find',
  'takeoff',
  'written',
  'methods',
  'glossary',
  'search',
  'attempts',
  'due',
  'checks',
  'check',
] as const;

export function isKeptPage(pathname: string): boolean {
  // A file that the server makes, such as a PDF, is no page.
  if (/\.\w+$/.test(pathname)) return false;
  const section = pathname.split('/')[1] ?? '';
  return section === '' || keptSections.some((kept) => kept === section);
}
