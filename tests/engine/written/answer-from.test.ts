import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerFaultCodes, answerFrom } from '#engine/written/answer-from.ts';
import { posed } from '#engine/written/posed.ts';
import { question, sound } from './asked.ts';

const codes = (input: unknown, shown?: Parameters<typeof answerFrom>[1]) => {
  const read = answerFrom(input, shown);
  return read.ok ? [] : read.error.map(({ code, path }) => `${code} ${path}`.trim());
};

const choose = posed(question('keeps-water-out', 'choose-all'), 1, sound)!;
const keys = 'choices' in choose ? choose.choices.map(({ key }) => key) : [];
const wall = posed(question('what-is-missing', 'find-fault'), 1, sound)!;

describe('truth', () => {
  it('takes an answer of every kind as it was given', () => {
    const answers = [
      { kind: 'choose-one', choice: 'k' },
      { kind: 'choose-all', choices: [] },
      { kind: 'order', steps: ['a', 'b'] },
      { kind: 'number', text: '8 in' },
      { kind: 'find-fault', zone: 'wall', fault: 'left-out' },
      { kind: 'find-fault', zone: 'toe', fault: 'rushed', card: 'prime' },
    ];
    for (const answer of answers) expect(answerFrom(answer)).toEqual({ ok: true, value: answer });
  });

  it.each([
    [undefined, ['NOT_AN_ANSWER']],
    [[], ['NOT_AN_ANSWER']],
    [{}, ['UNKNOWN_KIND kind']],
    [{ kind: 'essay' }, ['UNKNOWN_KIND kind']],
    [{ kind: 'number' }, ['WRONG_TYPE text']],
    [{ kind: 'number', text: 8 }, ['WRONG_TYPE text']],
    [{ kind: 'number', text: 'x'.repeat(401) }, ['WRONG_TYPE text']],
    [{ kind: 'order', steps: ['a', 1] }, ['WRONG_TYPE steps']],
    [{ kind: 'choose-all', choices: Array(41).fill('a') }, ['WRONG_TYPE choices']],
    [{ kind: 'choose-one', choice: '' }, ['WRONG_TYPE choice']],
    [
      { kind: 'find-fault', zone: 'roof', fault: 'bent', extra: 1 },
      ['UNKNOWN_FIELD extra', 'WRONG_TYPE zone', 'WRONG_TYPE fault'],
    ],
  ])('%j is refused: %j', (input, refused) => expect(codes(input)).toEqual(refused));

  it('an answer to something else than what was posed is refused', () => {
    expect(codes({ kind: 'number', text: '8' }, choose)).toEqual(['OTHER_KIND kind']);
    expect(codes({ kind: 'choose-all', choices: ['x'] }, choose)).toEqual([
      'UNKNOWN_CHOICE choices',
    ]);
    const twice = { kind: 'choose-all', choices: [keys[0], keys[0]] };
    expect(codes(twice, choose)).toEqual(['CHOSEN_TWICE choices']);
    expect(codes({ kind: 'find-fault', zone: 'seam', fault: 'rushed' }, wall)).toEqual([
      'UNKNOWN_CHOICE zone',
    ]);
    expect(codes({ kind: 'choose-all', choices: keys }, choose)).toEqual([]);
  });

  it('every code is shown above', () => {
    const shown = ['NOT_AN_ANSWER', 'UNKNOWN_KIND', 'OTHER_KIND', 'WRONG_TYPE', 'UNKNOWN_FIELD'];
    expect([...answerFaultCodes]).toEqual([...shown, 'UNKNOWN_CHOICE', 'CHOSEN_TWICE']);
  });
});

describe('laws', () => {
  it('never throws, whatever comes in', () => {
    fc.assert(
      fc.property(fc.anything({ withNullPrototype: true }), (input) => {
        expect(typeof answerFrom(input).ok).toBe('boolean');
      }),
    );
  });
});
