import { describe, expect, test } from 'vitest';
import { quantity } from '#engine/measure/conversion.ts';
import { refusals } from '#engine/exam/accept.ts';
import {
  allowedFor,
  deadlineOf,
  givenAnswers,
  isOver,
  nextSequence,
  usualGrace,
} from '#engine/exam/sitting.ts';
import { answer, minute, open, plan, played, sent, type Step } from './small-sitting.ts';

const metOf = (...steps: readonly Step[]) => played(steps).met;
const handIn = sent({ kind: 'handed-in' });
const ranOut = sent({ kind: 'time-ran-out' });
const release = sent({ kind: 'released', by: 'tomas' });
const voided = sent({ kind: 'voided', by: 'ines', because: 'a phone on the table' });
const retire = sent({ kind: 'item-retired', by: 'tomas', because: 'ambiguous', item: 'q2' });
const more = (milliseconds: number) =>
  sent({
    kind: 'time-granted',
    by: 'ines',
    because: 'alarm',
    grant: { kind: 'more', milliseconds },
  });
const pause = (from: number, to: number) =>
  sent({
    kind: 'time-granted',
    by: 'ines',
    because: 'the server stood still',
    grant: { kind: 'pause', from: from * minute, to: to * minute },
  });

/** Each refusal, by the last of the steps. */
const refused: readonly (readonly [(typeof refusals)[number], readonly Step[]])[] = [
  [
    'of-another-sitting',
    [
      [0, open],
      [1, { ...answer('q1', 1), sitting: 'sitting-2' }],
    ],
  ],
  [
    'not-on-this-form',
    [
      [0, open],
      [1, answer('q9', 1)],
    ],
  ],
  [
    'not-on-this-form',
    [
      [0, open],
      [1, sent({ kind: 'page-shown', item: 'q9', tab: 'a' })],
    ],
  ],
  [
    'not-on-this-form',
    [[0, sent({ kind: 'item-retired', by: 'tomas', because: 'old', item: 'q9' })]],
  ],
  ['not-opened', [[0, answer('q1', 1)]]],
  ['not-opened', [[0, handIn]]],
  ['not-opened', [[0, release]]],
  [
    'opened-already',
    [
      [0, open],
      [1, open],
    ],
  ],
  [
    'opened-already',
    [
      [0, open],
      [1, handIn],
      [2, open],
    ],
  ],
  [
    'late',
    [
      [0, open],
      [62.001, answer('q1', 1)],
    ],
  ],
  [
    'late',
    [
      [0, open],
      [60, ranOut],
      [63, answer('q1', 1)],
    ],
  ],
  [
    'handed-in',
    [
      [0, open],
      [1, handIn],
      [2, answer('q1', 1)],
    ],
  ],
  [
    'handed-in',
    [
      [0, open],
      [1, handIn],
      [2, handIn],
    ],
  ],
  [
    'handed-in',
    [
      [0, open],
      [1, handIn],
      [2, more(minute)],
    ],
  ],
  [
    'released',
    [
      [0, open],
      [1, handIn],
      [2, release],
      [3, answer('q1', 1)],
    ],
  ],
  [
    'released',
    [
      [0, open],
      [1, handIn],
      [2, release],
      [3, retire],
    ],
  ],
  [
    'voided',
    [
      [0, open],
      [1, voided],
      [2, answer('q1', 1)],
    ],
  ],
  [
    'voided',
    [
      [0, voided],
      [1, voided],
    ],
  ],
  [
    'id-used-before',
    [
      [0, open],
      [1, answer('q1', 1, { id: 'x' })],
      [2, answer('q2', 2, { id: 'x' })],
    ],
  ],
  [
    'bad-sequence',
    [
      [0, open],
      [1, answer('q1', 0)],
    ],
  ],
  [
    'bad-sequence',
    [
      [0, open],
      [1, answer('q1', 1.5)],
    ],
  ],
  ['by-the-candidate', [[0, sent({ kind: 'opened', by: plan.candidate })]]],
  [
    'by-the-candidate',
    [
      [0, open],
      [1, handIn],
      [2, sent({ kind: 'released', by: plan.candidate })],
    ],
  ],
  ['no-reason', [[0, sent({ kind: 'voided', by: 'ines', because: '  ' })]]],
  [
    'no-time',
    [
      [0, open],
      [1, more(0)],
    ],
  ],
  [
    'no-time',
    [
      [0, open],
      [1, more(Number.NaN)],
    ],
  ],
  [
    'pause-outside',
    [
      [5, open],
      [9, pause(4, 8)],
    ],
  ],
  [
    'pause-outside',
    [
      [0, open],
      [9, pause(8, 10)],
    ],
  ],
  [
    'pause-outside',
    [
      [0, open],
      [9, pause(8, 8)],
    ],
  ],
  [
    'time-left',
    [
      [0, open],
      [59.999, ranOut],
    ],
  ],
  [
    'ran-out-already',
    [
      [0, open],
      [60, ranOut],
      [61, ranOut],
    ],
  ],
  [
    'retired-already',
    [
      [0, retire],
      [1, retire],
    ],
  ],
  [
    'still-open',
    [
      [0, open],
      [62, release],
    ],
  ],
];

describe('truth', () => {
  test.each(refused)('%s', (refusal, steps) => {
    const met = metOf(...steps);
    expect(met.slice(0, -1).every((each) => each === 'taken')).toBe(true);
    expect(met.at(-1)).toBe(refusal);
  });

  test('every refusal is shown above', () => {
    expect(new Set(refused.map(([refusal]) => refusal))).toEqual(new Set(refusals));
  });

  test('an answer counts up to the last instant of the grace', () => {
    expect(metOf([0, open], [60, ranOut], [62, answer('q1', 1)])).toEqual([
      'taken',
      'taken',
      'taken',
    ]);
  });

  test('what was sent twice is acknowledged and changes nothing, even when all is over', () => {
    const given = answer('q1', 1);
    const once = played([
      [0, open],
      [1, given],
      [2, handIn],
    ]);
    const twice = played([
      [0, open],
      [1, given],
      [1, given],
      [2, handIn],
      [300, given],
    ]);
    expect(twice.met).toEqual(['taken', 'taken', 'double', 'taken', 'double']);
    expect(twice.sitting).toEqual(once.sitting);
  });

  test('an answer that comes after a later one is kept and does not count', () => {
    const { sitting, met } = played([
      [0, open],
      [2, answer('q1', 5)],
      [3, answer('q1', 4)],
    ]);
    expect(met).toEqual(['taken', 'taken', 'older']);
    expect(sitting.counts.get('q1')?.value).toBe('q1/5');
    expect([...sitting.given.values()].map(({ value }) => value)).toEqual(['q1/5', 'q1/4']);
    expect(sitting.log).toHaveLength(3);
  });

  test('of two tabs the higher number counts, and of two alike the one that came later', () => {
    const { sitting } = played([
      [0, open],
      [1, answer('q1', 3, { tab: 'a', value: 'first tab' })],
      [2, answer('q1', 3, { tab: 'b', value: 'second tab' })],
      [3, answer('q2', 5, { tab: 'b', value: 'second tab' })],
      [4, answer('q2', 4, { tab: 'a', value: 'first tab' })],
    ]);
    expect([...sitting.counts.values()].map(({ value }) => value)).toEqual([
      'second tab',
      'second tab',
    ]);
    expect(sitting.given.size).toBe(4);
    expect(nextSequence(sitting)).toBe(6);
  });

  test('time granted after the time ran out opens it again, and the answers come in', () => {
    const held = answer('q1', 1);
    const { sitting, met } = played([
      [0, open],
      [60, ranOut],
      [80, held],
      [81, more(25 * minute)],
      [82, held],
      [85, ranOut],
    ]);
    expect(met).toEqual(['taken', 'taken', 'late', 'taken', 'taken', 'taken']);
    expect(sitting.counts.get('q1')).toBeDefined();
    expect(deadlineOf(sitting)).toBe(85 * minute);
  });

  test('a stop of the server is given back once, however many grants name it', () => {
    const { sitting } = played([
      [0, open],
      [70, pause(50, 70)],
      [71, pause(50, 70)],
      [72, pause(45, 60)],
    ]);
    // 10 minutes were left when it stopped at 50; from 45 on 25 minutes were lost.
    expect(deadlineOf(sitting)).toBe((60 + 25) * minute);
    expect(isOver(sitting, 87 * minute)).toBe(false);
    expect(isOver(sitting, 87 * minute + 1)).toBe(true);
  });

  test('a question retired in mid-exam is still answered and kept', () => {
    const { sitting, met } = played([
      [0, open],
      [1, retire],
      [2, answer('q2', 1)],
    ]);
    expect(met).toEqual(['taken', 'taken', 'taken']);
    expect(sitting.retired).toEqual(new Set(['q2']));
    expect(sitting.counts.get('q2')).toBeDefined();
  });

  test.each([
    ['another question', { item: 'q2', value: 'yes' }],
    ['another answer', { item: 'q1', value: 'no' }],
  ])('an id that comes again with %s is no second sending', (_, { item, value }) => {
    const first = answer('q1', 1, { id: 'x', value: 'yes' });
    const { sitting, met } = played([
      [0, open],
      [1, first],
      [2, answer(item, 2, { id: 'x', value })],
    ]);
    expect(met.at(-1)).toBe('id-used-before');
    expect(sitting.counts.get('q1')?.value).toBe('yes');
  });

  test('a page is shown from the first time on', () => {
    const page = sent({ kind: 'page-shown', item: 'q1', tab: 'a' });
    const { sitting } = played([
      [0, open],
      [1, page],
      [5, page],
    ]);
    expect(sitting.shown.get('q1')).toBe(minute);
    expect(sitting.log).toHaveLength(3);
  });

  test('leaving the page is noted by tab, with how long', () => {
    const { sitting } = played([
      [0, open],
      [1, sent({ kind: 'left-page', tab: 'a' })],
      [2, sent({ kind: 'left-page', tab: 'b' })],
      [3, sent({ kind: 'came-back', tab: 'a' })],
    ]);
    expect(sitting.absences).toEqual([
      { tab: 'a', from: minute, to: 3 * minute },
      { tab: 'b', from: 2 * minute, to: undefined },
    ]);
  });

  test('a question that was not answered is there to be marked, in its place', () => {
    const { sitting } = played([
      [0, open],
      [1, answer('q3', 1)],
      [2, answer('q1', 2)],
    ]);
    expect(givenAnswers(sitting).map(({ item, answer: given }) => [item, given?.value])).toEqual([
      ['q1', 'q1/2'],
      ['q2', undefined],
      ['q3', 'q3/1'],
      ['q4', undefined],
    ]);
  });

  test('a part of 50 minutes allows so many milliseconds', () => {
    expect(allowedFor({ time: quantity(50, 'min') })).toBe(3_000_000);
    expect(plan.grace).toBe(2 * usualGrace);
  });

  test('a server clock that was set back does not set the log back', () => {
    const { sitting } = played([
      [10, open],
      [4, answer('q1', 1)],
      [11, answer('q2', 2)],
    ]);
    expect(sitting.log.map(({ at }) => at / minute)).toEqual([10, 10, 11]);
  });
});
