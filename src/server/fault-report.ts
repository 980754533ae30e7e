import { randomBytes } from 'node:crypto';
import type { Log } from './log.ts';

/** What is logged of an error: what kind and where, not its message, which may quote what was sent. */
export function traceOf(error: unknown): { readonly kind: string; readonly trace: string } {
  if (!(error instanceof Error)) return { kind: typeof error, trace: '' };
  const code: unknown = 'code' in error ? error.code : undefined;
  const kind =
    typeof code === 'string' && /^\w{1,40}$/.test(code) ? `${error.name} ${code}` : error.name;
  const stack = error.stack ?? '';
  const said = stack.indexOf(error.message);
  const frames = (said < 0 ? stack : stack.slice(said + error.message.length)).split('\n');
  return {
    kind: /^[\w ]{1,80}$/.test(kind) ? kind : 'Error',
    trace: frames
      .filter((line) => /^ {4}at \S.*:\d+:\d+\)?$/.test(line))
      .slice(0, 12)
      .map((line) => line.trim())
      .join(' | '),
  };
}

/** Logs an error under an id that the person before the screen is told, too. */
export function report(
  log: Log,
  error: unknown,
  about: { readonly route: string; readonly method: string; readonly outage?: string },
): string {
  const id = randomBytes(4).toString('hex');
  log.error('fault', { id, ...about, ...traceOf(error) });
  return id;
}
