import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isKeptProblem, type KeptProblem } from '#engine/takeoff/kept-problem.ts';

const problem: KeptProblem = {
  id: 'abc',
  at: '2030-05-01T07:30:00.000Z',
  family: 'fasteners-one-bar',
  seed: '42',
  form: 'entry',
  revision: '0123',
  sheetRevision: '4567',
  answers: [
    {
      part: 'fasteners',
      tries: [{ text: '13' }, { text: '14', picked: '1' }],
      verdict: 'slip',
      slips: ['one-too-few'],
      followed: false,
      credit: 0,
      shown: false,
      closed: true,
    },
  ],
};

describe('truth', () => {
  it('what is kept is read back', () => {
    expect(isKeptProblem(JSON.parse(JSON.stringify(problem)))).toBe(true);
  });

  it.each<[string, object]>([
    ['an instant that is none', { at: 'yesterday' }],
    ['an unknown form', { form: 'aloud' }],
    ['answers that are no list', { answers: {} }],
    ['an unknown verdict', { answers: [{ ...problem.answers[0], verdict: 'fine' }] }],
    ['more credit than there is', { answers: [{ ...problem.answers[0], credit: 2 }] }],
    ['a try without its text', { answers: [{ ...problem.answers[0], tries: [{}] }] }],
    ['no name', { id: undefined }],
  ])('%s is not', (_, other) => {
    expect(isKeptProblem({ ...problem, ...other })).toBe(false);
  });
});

describe('laws', () => {
  it('anything else that a browser may hold is refused without a throw', () => {
    fc.assert(fc.property(fc.anything(), (value) => !isKeptProblem(value)));
  });
});
