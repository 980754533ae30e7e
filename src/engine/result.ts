/** The outcome of a door: a right value, or what was wrong with what came in. */
export type Result<T, E> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: E };

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });

export const fault = <E>(error: E): { readonly ok: false; readonly error: E } => ({
  ok: false,
  error,
});
