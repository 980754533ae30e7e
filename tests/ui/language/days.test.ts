import { afterEach, describe, expect, test } from 'vitest';
import { languages } from '#engine/text.ts';
import { instantWords } from '#ui/attempts/instant-words.ts';
import { calendarDay } from '#ui/board/calendar-day.ts';
import { certificateDay } from '#ui/certificates/state-words.ts';
import { plainDay } from '#ui/decisions/plain-day.ts';
import { language } from '#ui/language/language.svelte.ts';
import { dayWords } from '#ui/people/day-words.ts';

afterEach(() => language.choose('en'));

/** An instant whose day and hour are these on the clock of whoever runs the test. */
const onTheClock = new Date(2027, 2, 4, 14, 5).toISOString();

/** Spaces that do not break differ from one release of the browser's tables to the next. */
const plain = (words: string): string => words.replaceAll(/\s/g, ' ');

describe('truth', () => {
  test.each([
    ['a day of the calendar', () => calendarDay('2027-03-04'), 'Mar 4, 2027', '4 mar 2027'],
    [
      'the same at length',
      () => calendarDay('2027-03-04', 'long'),
      'March 4, 2027',
      '4 de marzo de 2027',
    ],
    [
      'a day of a certificate',
      () => certificateDay('2027-03-04'),
      'March 4, 2027',
      '4 de marzo de 2027',
    ],
    ['a day of a decision', () => plainDay('2027-03-04'), 'March 4, 2027', '4 de marzo de 2027'],
    ['the day of an instant', () => dayWords(onTheClock), 'March 4, 2027', '4 de marzo de 2027'],
    ['an instant', () => instantWords(onTheClock), 'Mar 4, 2027, 2:05 PM', '4 mar 2027, 2:05 p.m.'],
  ])('%s is written as the language of the screen writes it', (_name, written, en, es) => {
    const found = languages.map((each) => {
      language.choose(each);
      return plain(written());
    });
    expect(found).toEqual([en, es]);
  });
});
