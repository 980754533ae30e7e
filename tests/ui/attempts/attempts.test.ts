import { beforeEach, describe, expect, it, test } from 'vitest';
import type { KeptAttempt } from '#engine/marking/kept-attempt.ts';
import { Attempts } from '#ui/attempts/attempts.svelte.ts';
import { browserStore } from '#ui/attempts/browser-store.ts';

const kept = (id: string, finished = `2030-05-0${id}T07:30:00.000Z`): KeptAttempt => ({
  id,
  finished,
  mode: 'own',
  seed: '1',
  help: [],
  revision: 'r',
  score: 80,
  outcome: 'rework',
  attempt: { method: 'tiny-wall', site: {}, steps: [{ step: 'prime' }] },
});

const opened = (): Attempts => {
  const attempts = new Attempts(browserStore);
  attempts.recall();
  return attempts;
};

const ids = (attempts: Attempts) => attempts.kept.map(({ id }) => id);

beforeEach(() => {
  localStorage.clear();
});

describe('truth', () => {
  test('the latest stands first, also when the browser is opened again', () => {
    const attempts = opened();
    for (const id of ['2', '3', '1']) expect(attempts.keep(kept(id))).toBe(true);
    expect(ids(attempts)).toEqual(['3', '2', '1']);
    expect(ids(opened())).toEqual(['3', '2', '1']);
  });

  test('an attempt kept twice is one', () => {
    const attempts = opened();
    attempts.keep(kept('1'));
    attempts.keep(kept('1'));
    expect(ids(attempts)).toEqual(['1']);
  });

  test('what was removed can be brought back', () => {
    const attempts = opened();
    for (const id of ['1', '2', '3']) attempts.keep(kept(id));
    attempts.remove(['1', '3']);
    expect(ids(opened())).toEqual(['2']);
    attempts.bringBack();
    expect(ids(opened())).toEqual(['3', '2', '1']);
    expect(attempts.removed).toEqual([]);
  });

  test('an entry of another making is left alone and counted', () => {
    localStorage.setItem('attempt/9', '{"score":"high"}');
    const attempts = opened();
    attempts.keep(kept('1'));
    expect(ids(attempts)).toEqual(['1']);
    expect(attempts.unreadable).toEqual(['attempt/9']);
    expect(localStorage.getItem('attempt/9')).toBe('{"score":"high"}');
  });

  test('a file adds what is new to what is here', () => {
    const attempts = opened();
    attempts.keep(kept('1'));
    const file = JSON.stringify({ attempts: [kept('1'), kept('2')] });
    expect(attempts.addFrom(file)).toEqual({ ok: true, value: { added: 1, unkept: 0 } });
    expect(ids(opened())).toEqual(['2', '1']);
  });

  test.each([
    ['{', 'NOT_AN_ATTEMPT', ''],
    ['{"attempts":{}}', 'NOT_AN_ATTEMPT', ''],
    [
      JSON.stringify({ attempts: [kept('2'), { ...kept('3'), score: 'high' }] }),
      'WRONG_TYPE',
      'attempts[1].score',
    ],
  ])('a file with a fault adds nothing and loses nothing: %s', (text, code, path) => {
    const attempts = opened();
    attempts.keep(kept('1'));
    const read = attempts.addFrom(text);
    expect(!read.ok && read.error.map((fault) => [fault.code, fault.path])).toEqual([[code, path]]);
    expect(ids(opened())).toEqual(['1']);
  });
});

describe('laws', () => {
  it('a file that was saved here is read here', () => {
    const attempts = opened();
    for (const id of ['1', '2']) attempts.keep(kept(id));
    const file = attempts.toFile();
    attempts.remove(['1', '2']);
    expect(attempts.addFrom(file)).toEqual({ ok: true, value: { added: 2, unkept: 0 } });
    expect(attempts.kept).toEqual([kept('2'), kept('1')]);
  });
});
