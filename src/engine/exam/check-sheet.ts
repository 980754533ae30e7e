/**
 * What an examiner wrote down at the wall so far: one line for each point, note, photo and kind of weather,
 * each with the instant at which it was last changed. Two sheets of one check, as from a phone that was
 * without signal and from the server, merge line by line, the later line standing: in whatever order and
 * however often they meet, the same comes of it. O(lines).
 */
import { weatherConditions, type WeatherCondition } from '#engine/method/site.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { isUuid } from '#engine/uuid.ts';

/** `says` is what was written, as it was written; null where it was taken back. */
export type CheckLine = { readonly at: string; readonly says: string | null };
export type CheckSheet = Readonly<Record<string, CheckLine>>;

/** The name of a line that is not a point's own. */
export const noteLine = (point = ''): string => `note:${point}`;
export const weatherLine = (condition: WeatherCondition): string => `weather:${condition}`;
/** It says by which point the photo stands; nothing for the whole wall. */
export const photoLine = (photo: string): string => `photo:${photo}`;

export const noteOf = (sheet: CheckSheet, point = ''): string => sheet[noteLine(point)]?.says ?? '';

export type SheetPhoto = { readonly id: string; readonly point: string };

/** In the order in which they were taken, as their names are made from the time. */
export const photosIn = (sheet: CheckSheet): readonly SheetPhoto[] =>
  Object.entries(sheet)
    .flatMap(([name, { says }]) =>
      name.startsWith('photo:') && says !== null ? [{ id: name.slice(6), point: says }] : [],
    )
    .toSorted((a, b) => (a.id < b.id ? -1 : 1));

const later = (one: CheckLine, other: CheckLine): CheckLine => {
  if (one.at !== other.at) return one.at > other.at ? one : other;
  // The same instant on two devices: any rule does that is the same on both.
  return (one.says ?? '') >= (other.says ?? '') ? one : other;
};

export function merged(one: CheckSheet, other: CheckSheet): CheckSheet {
  const lines = new Map(Object.entries(one));
  for (const [name, line] of Object.entries(other)) {
    const known = lines.get(name);
    lines.set(name, known ? later(known, line) : line);
  }
  return Object.fromEntries(lines);
}

/** With a line changed; later than what stood there even where the clock was set back meanwhile. */
export function withLine(
  sheet: CheckSheet,
  name: string,
  says: string | null,
  now: number,
): CheckSheet {
  const before = sheet[name] ? Date.parse(sheet[name].at) : 0;
  return { ...sheet, [name]: { at: new Date(Math.max(now, before + 1)).toISOString(), says } };
}

/** More than any wall has points, notes and photos together. */
export const mostLines = 800;
export const longestLine = 2000;

export type SheetFault = {
  readonly code: 'NOT_A_SHEET' | 'TOO_MANY_LINES' | 'NOT_A_LINE';
  readonly line: string;
};

const instant = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/;

/**
 * The one door for a sheet from outside. A line from a clock that goes ahead counts as of `now`, or nobody
 * could change it until then.
 */
export function sheetFrom(
  value: unknown,
  points: ReadonlySet<string>,
  now: string,
): Result<CheckSheet, readonly SheetFault[]> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return fault([{ code: 'NOT_A_SHEET', line: '' }]);
  }
  const lines = Object.entries(value);
  if (lines.length > mostLines) return fault([{ code: 'TOO_MANY_LINES', line: '' }]);
  const wrong = lines
    .filter(([name, line]) => !isName(name, points) || !isLine(line))
    .map(([name]) => ({ code: 'NOT_A_LINE', line: name.slice(0, 200) }) as const);
  if (wrong.length > 0) return fault(wrong);
  return ok(
    Object.fromEntries(
      lines.map(([name, { at, says }]: [string, CheckLine]) => [
        name,
        { at: at > now ? now : at, says },
      ]),
    ),
  );
}

function isName(name: string, points: ReadonlySet<string>): boolean {
  if (points.has(name)) return true;
  const [kind = '', ...rest] = name.split(':');
  const of = rest.join(':');
  if (kind === 'note') return of === '' || points.has(of);
  if (kind === 'weather') return weatherConditions.some((known) => known === of);
  return kind === 'photo' && isUuid(of);
}

function isLine(line: unknown): line is CheckLine {
  if (typeof line !== 'object' || line === null) return false;
  const { at, says } = line as Readonly<Record<string, unknown>>;
  const isSaid = says === null || (typeof says === 'string' && says.length <= longestLine);
  return isSaid && typeof at === 'string' && instant.test(at) && !Number.isNaN(Date.parse(at));
}
