/** A field of a form or an address as text; empty where it is missing or a file. */
export function textOf(form: FormData | URLSearchParams, name: string): string {
  const value = form.get(name);
  return typeof value === 'string' ? value : '';
}
