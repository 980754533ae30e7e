import { describe, expect, it } from 'vitest';
import type { PartId } from '#engine/takeoff/family.ts';
import { markAnswers } from '#engine/takeoff/marks.ts';
import { job } from './shipped.ts';

const marked = (instance: ReturnType<typeof job>, answers: Readonly<Record<string, string>>) =>
  markAnswers(
    instance,
    new Map(Object.entries(answers).map(([id, text]) => [id as PartId, { text }])),
  ).map(({ part, verdict, credit }) => [part, verdict?.kind, verdict?.followed ?? false, credit]);

// 81 ft in sheets of 10 ft: 9 sheets, 8 seams, 82 ft 4 in.
const wall = job('sheets-straight-run', { run: '81 ft', sheet: '10 ft' });

describe('parts that build on each other', () => {
  it('are all right when each is', () => {
    expect(marked(wall, { sheets: '9', laps: '8', length: `82'-4"` })).toEqual([
      ['sheets', 'right', false, 1],
      ['laps', 'right', false, 1],
      ['length', 'right', false, 1],
    ]);
  });

  it('a wrong first part, used rightly, does not cost the others', () => {
    expect(marked(wall, { sheets: '12', laps: '11', length: `82'-10"` })).toEqual([
      ['sheets', 'wrong', false, 0],
      ['laps', 'right', true, 1],
      ['length', 'right', true, 1],
    ]);
  });

  it('a slip in a later part is found from the person’s own numbers too', () => {
    expect(marked(wall, { sheets: '12', laps: '12', length: `83'-2"` })).toEqual([
      ['sheets', 'wrong', false, 0],
      ['laps', 'slip', true, 0],
      ['length', 'wrong', false, 0],
    ]);
  });

  it('who comes back to the right number is right', () => {
    expect(marked(wall, { sheets: '12', laps: '8', length: `82'-4"` })[1]).toEqual([
      'laps',
      'right',
      false,
      1,
    ]);
  });

  it('a part left out or unreadable counts nothing, and the next is judged by the right numbers', () => {
    expect(marked(wall, { sheets: 'many', length: `82'-4"` })).toEqual([
      ['sheets', undefined, false, 0],
      ['laps', undefined, false, 0],
      ['length', 'right', false, 1],
    ]);
  });

  it('a bad rounding earns half', () => {
    expect(marked(wall, { sheets: '8.22' })[0]).toEqual(['sheets', 'badly-rounded', false, 0.5]);
  });

  it('an earlier answer that makes no sense further on is not followed', () => {
    const bar = job('fasteners-one-bar', { bar: '96 in' });
    expect(marked(bar, { fasteners: '1', spacing: '7 13/16 in' })).toEqual([
      ['fasteners', 'wrong', false, 0],
      ['spacing', 'right', false, 1],
    ]);
    expect(marked(bar, { fasteners: '1', spacing: '3 in' })[1]![1]).toBe('wrong');
  });

  it('says that it followed', () => {
    const marks = markAnswers(
      wall,
      new Map([
        ['sheets' as PartId, { text: '12' }],
        ['laps' as PartId, { text: '11' }],
      ]),
    );
    expect(marks[1]!.verdict!.say.en).toContain('your own earlier answer');
  });

  it('an earlier answer of another kind is not followed', () => {
    expect(marked(wall, { sheets: '12 ft', laps: '8' })).toEqual([
      ['sheets', 'wrong-unit', false, 0],
      ['laps', 'right', false, 1],
      ['length', undefined, false, 0],
    ]);
  });
});
