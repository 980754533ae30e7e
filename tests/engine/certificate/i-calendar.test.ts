import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import type { IsoDate } from '#engine/calendar.ts';
import {
  type CalendarEntry,
  escaped,
  folded,
  writtenCalendar,
} from '#engine/certificate/i-calendar.ts';

const entry: CalendarEntry = {
  uid: '0190-a@underlap.example',
  on: '2033-02-28' as IsoDate,
  summary: 'Termina el certificado: Esquinas y juntas; José, Peña \\ Cía.',
  description:
    'First line.\nSecond line, which goes on and on and on and on and on until it is long.',
  url: 'https://underlap.example/verify/AAAAAAAAAAAAAAAAAAAAAA',
};
const at = '2030-05-01T07:30:00.123Z';
const written = (entries: readonly CalendarEntry[] = [entry]) =>
  writtenCalendar({ name: 'Renewals – North Wall', at, entries });

/** As an independent reader understands it. */
const read = (text: string) =>
  new ICAL.Component(ICAL.parse(text) as ConstructorParameters<typeof ICAL.Component>[0]);

describe('truth', () => {
  // RFC 5545 (2009), section 3.3.11: the example of a text with an escaped comma and line breaks.
  test('text is escaped as in the example of RFC 5545', () => {
    const plain = 'Project XYZ Final Review\nConference Room - 3B\nCome Prepared.';
    expect(escaped(plain)).toBe('Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.');
    expect(escaped('a,b;c\\d\r\ne\u0007')).toBe('a\\,b\\;c\\\\d\\ne');
  });

  test('an independent reader finds what was put in', () => {
    const calendar = read(written());
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(String(calendar.getFirstPropertyValue('prodid'))).toContain('Underlap');
    const event = new ICAL.Event(calendar.getFirstSubcomponent('vevent')!);
    expect(event.uid).toBe(entry.uid);
    expect(event.summary).toBe(entry.summary);
    expect(event.description).toBe(entry.description);
    expect(event.startDate.toString()).toBe('2033-02-28');
    expect(event.startDate.isDate).toBe(true);
    // The end of a day's event is the day after (section 3.6.1), here over the end of a month.
    expect(event.endDate.toString()).toBe('2033-03-01');
    const { component } = event;
    expect(String(component.getFirstPropertyValue('dtstamp'))).toBe('2030-05-01T07:30:00Z');
    expect(component.getFirstPropertyValue('url')).toBe(entry.url);
    const triggers = component
      .getAllSubcomponents('valarm')
      .map((alarm) => String(alarm.getFirstPropertyValue('trigger')));
    expect(triggers).toEqual(['-P60D', '-P30D', 'PT8H']);
  });

  test('a calendar without entries is one all the same', () => {
    expect(read(written([])).getAllSubcomponents('vevent')).toEqual([]);
  });
});

describe('laws', () => {
  const octets = (text: string): number => new TextEncoder().encode(text).length;

  test('every line ends in CRLF and has 75 octets or fewer', () => {
    const lines = written().split('\r\n');
    expect(lines.at(-1)).toBe('');
    for (const line of lines) {
      expect(octets(line)).toBeLessThanOrEqual(75);
      expect(line).not.toMatch(/[\r\n]/);
    }
    expect(lines.some((line) => line.startsWith(' '))).toBe(true);
  });

  test('a folded line comes back whole, with no character cut', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (text) => {
        const line = text.replace(/[\r\n]/g, '');
        const parts = folded(line).split('\r\n');
        expect(parts.map((part, place) => (place === 0 ? part : part.slice(1))).join('')).toBe(
          line,
        );
        for (const part of parts) expect(octets(part)).toBeLessThanOrEqual(75);
      }),
    );
  });

  test('any text comes back through the independent reader', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 200 }), (text) => {
        const summary = text.replace(/[\u0000-\u001f\u007f]/g, ' ');
        const event = read(written([{ ...entry, summary }])).getFirstSubcomponent('vevent')!;
        expect(event.getFirstPropertyValue('summary')).toBe(summary);
      }),
    );
  });
});
