/** What the server says of itself: a line of JSON each, without names, addresses or what anybody wrote. */
import { type LogLevel, settingsFrom } from './settings.ts';

type Fields = Readonly<Record<string, string | number | boolean | undefined>>;

export type Log = {
  readonly info: (event: string, fields?: Fields) => void;
  readonly error: (event: string, fields?: Fields) => void;
};

export function logTo(level: LogLevel, write: (line: string) => void, now = () => new Date()): Log {
  const line =
    (severity: 'info' | 'error') =>
    (event: string, fields: Fields = {}) =>
      write(`${JSON.stringify({ at: now().toISOString(), level: severity, event, ...fields })}\n`);
  const silent = () => undefined;
  return {
    info: level === 'info' ? line('info') : silent,
    error: level === 'off' ? silent : line('error'),
  };
}

let own: Log | undefined;

/** The log of this process, on its standard error. Faulty settings are told when the server starts. */
export function ownLog(): Log {
  if (own) return own;
  const settings = settingsFrom(process.env);
  const level = settings.ok ? settings.value.logLevel : 'error';
  return (own = logTo(level, (line) => process.stderr.write(line)));
}
