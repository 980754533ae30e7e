/** Renewals as an iCalendar object (RFC 5545, 2009): days, each with reminders before it and on it. */
import { addPeriod, type IsoDate } from '#engine/calendar.ts';

export type CalendarEntry = {
  /** The same for the same thing, so that a calendar changes its entry and adds none. */
  readonly uid: string;
  readonly on: IsoDate;
  readonly summary: string;
  readonly description: string;
  readonly url: string;
};

export type Calendar = {
  readonly name: string;
  /** When it was written, as `2030-05-01T07:30:00.000Z`. */
  readonly at: string;
  readonly entries: readonly CalendarEntry[];
};

/** Section 3.3.11: of text, these four are escaped, and other controls have no place in it. */
export const escaped = (text: string): string =>
  text
    .replace(/[\\;,]/g, (sign) => `\\${sign}`)
    .replace(/\r\n|\r|\n/g, '\\n')
    .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '');

/** In octets, the break not counted (section 3.1). */
const longest = 75;

const encoder = new TextEncoder();

/** Breaks a line between characters, and never within the octets of one. */
export function folded(line: string): string {
  const lines = [''];
  let octets = 0;
  for (const character of line) {
    const { length } = encoder.encode(character);
    if (octets + length > longest) {
      lines.push(' ');
      octets = 1;
    }
    lines[lines.length - 1] += character;
    octets += length;
  }
  return lines.join('\r\n');
}

const compactDay = (day: IsoDate): string => day.replaceAll('-', '');

/** `20300501T073000Z`. */
const compactInstant = (at: string): string => at.slice(0, 19).replace(/[-:]/g, '').concat('Z');

const alarm = (trigger: string, said: string): readonly string[] => [
  'BEGIN:VALARM',
  'ACTION:DISPLAY',
  `DESCRIPTION:${escaped(said)}`,
  `TRIGGER:${trigger}`,
  'END:VALARM',
];

const eventLines = ({ uid, on, summary, description, url }: CalendarEntry, at: string) => [
  'BEGIN:VEVENT',
  `UID:${escaped(uid)}`,
  `DTSTAMP:${compactInstant(at)}`,
  `DTSTART;VALUE=DATE:${compactDay(on)}`,
  `DTEND;VALUE=DATE:${compactDay(addPeriod(on, { count: 1, unit: 'days' }))}`,
  `SUMMARY:${escaped(summary)}`,
  `DESCRIPTION:${escaped(description)}`,
  `URL:${url}`,
  'TRANSP:TRANSPARENT',
  ...alarm('-P60D', summary),
  ...alarm('-P30D', summary),
  // On the day itself, when people are up: a day begins at midnight where the calendar is.
  ...alarm('PT8H', summary),
  'END:VEVENT',
];

export const writtenCalendar = ({ name, at, entries }: Calendar): string =>
  [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Underlap//Renewals//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    `X-WR-CALNAME:${escaped(name)}`,
    ...entries.flatMap((entry) => eventLines(entry, at)),
    'END:VCALENDAR',
    '',
  ]
    .map(folded)
    .join('\r\n');
