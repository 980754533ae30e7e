import { describe, expect, it, test } from 'vitest';
import {
  type KeptAttempt,
  keptAttemptsFrom,
  keptFaults,
  mostAttempts,
} from '#engine/marking/kept-attempt.ts';
import { markKept } from '#engine/marking/kept-review.ts';
import { content, walls } from '../../content/walls.ts';

const { sequence } = walls[0]!;
const ids = sequence.steps.map(({ id }) => id);

const kept: KeptAttempt = {
  id: 'a-1',
  finished: '2030-05-01T07:30:00.000Z',
  mode: 'own',
  seed: '4',
  help: [],
  revision: content.revision,
  score: 100,
  outcome: 'accept',
  attempt: {
    method: sequence.method.id,
    site: sequence.site,
    steps: ids.map((step) => ({ step })),
  },
};

const codesOf = (input: unknown) => {
  const read = keptAttemptsFrom(input);
  return read.ok ? [] : read.error.map(({ code, path }) => `${code} ${path}`);
};

describe('truth', () => {
  test('what was written as JSON is read as it was', () => {
    const again: unknown = JSON.parse(JSON.stringify({ attempts: [kept] }));
    expect(keptAttemptsFrom(again)).toEqual({ ok: true, value: [kept] });
  });

  test.each([
    ['nothing', undefined, ['NOT_AN_ATTEMPT ']],
    ['a list', [kept], ['NOT_AN_ATTEMPT ']],
    ['a number for an attempt', { attempts: [7] }, ['NOT_AN_ATTEMPT attempts[0]']],
    ['too many', { attempts: Array(mostAttempts + 1).fill(kept) }, ['TOO_MANY_CARDS attempts']],
    ['no id', { attempts: [kept, { ...kept, id: undefined }] }, ['WRONG_TYPE attempts[1].id']],
    ['an id with a slash', { attempts: [{ ...kept, id: '../x' }] }, ['WRONG_TYPE attempts[0].id']],
    [
      'no day and no such mode',
      { attempts: [{ ...kept, finished: 'today', mode: 'race' }] },
      ['WRONG_TYPE attempts[0].finished', 'WRONG_TYPE attempts[0].mode'],
    ],
    [
      'half a stretch and help there is none of',
      { attempts: [{ ...kept, part: ['a'], help: ['answer'] }] },
      ['WRONG_TYPE attempts[0].part', 'WRONG_TYPE attempts[0].help'],
    ],
    [
      'a score beyond 100 and no such outcome',
      { attempts: [{ ...kept, score: 101, outcome: 'passed' }] },
      ['WRONG_TYPE attempts[0].score', 'WRONG_TYPE attempts[0].outcome'],
    ],
    [
      'a card that is no card',
      { attempts: [{ ...kept, attempt: { ...kept.attempt, steps: ['x'] } }] },
      ['WRONG_TYPE attempts[0].attempt.steps[0]'],
    ],
    [
      'an attempt of nothing',
      { attempts: [{ ...kept, attempt: 3 }] },
      ['NOT_AN_ATTEMPT attempts[0].attempt'],
    ],
  ])('%s is refused with its place', (_, input, faults) => {
    expect(codesOf(input)).toEqual(faults);
  });

  test('every field that is missing is named', () => {
    expect(keptFaults({}).map(({ code, path }) => `${code} ${path}`)).toEqual(
      ['id', 'finished', 'mode', 'seed', 'help', 'revision', 'score', 'outcome', 'attempt'].map(
        (name) => `MISSING_FIELD ${name}`,
      ),
    );
  });
});

describe('laws', () => {
  it('marks a kept attempt again as it was marked', () => {
    const marked = markKept(kept, content);
    expect(marked.ok && marked.value.score).toBe(100);
  });

  it('takes off the help', () => {
    const marked = markKept({ ...kept, help: ['reason', 'refusal'] }, content);
    expect(marked.ok && marked.value.score).toBe(98.5);
  });

  it('marks a stretch by its own steps', () => {
    const part = [ids[3]!, ids[6]!] as const;
    const steps = ids.slice(3, 7).map((step) => ({ step }));
    const right = markKept({ ...kept, part, attempt: { ...kept.attempt, steps } }, content);
    expect(right.ok && right.value.review.items).toEqual([]);
    const short = markKept(
      { ...kept, part, attempt: { ...kept.attempt, steps: steps.slice(1) } },
      content,
    );
    expect(short.ok && short.value.review.items.map(({ kind, card }) => [kind, card])).toEqual([
      ['left-out', ids[3]],
    ]);
  });

  it('says what the content no longer has', () => {
    const gone = markKept({ ...kept, attempt: { ...kept.attempt, method: 'roof' } }, content);
    expect(!gone.ok && gone.error.map(({ code }) => code)).toEqual(['UNKNOWN_METHOD']);
    const stretch = markKept({ ...kept, part: ['roof', ids[0]!] }, content);
    expect(!stretch.ok && stretch.error.map(({ path }) => path)).toEqual(['part']);
  });
});
