import { expect, test } from 'vitest';
import { RecentTries } from '#server/logins/recent-tries.ts';

const start = Date.parse('2030-05-01T12:00:00Z');
const at = (seconds: number): Date => new Date(start + seconds * 1000);
const limit = { most: 3, seconds: 60 };

const waits = (tries: RecentTries, key: string, seconds: readonly number[]): readonly number[] =>
  seconds.map((second) => tries.waitFor(key, at(second)));

test('so many tries in a while are free, and each later one is told how long to wait', () => {
  const tries = new RecentTries(limit);
  expect(waits(tries, 'a', [0, 1, 2, 20, 59.5])).toEqual([0, 0, 0, 40, 1]);
  expect(waits(tries, 'b', [30])).toEqual([0]);
});

test('a new while starts when the old one is over, or when the clock was set back', () => {
  const tries = new RecentTries(limit);
  expect(waits(tries, 'a', [0, 0, 0, 0, 60])).toEqual([0, 0, 0, 60, 0]);
  expect(waits(tries, 'b', [0, 0, 0, 0, -1])).toEqual([0, 0, 0, 60, 0]);
});

test('of ever more addresses those are forgotten that tried longest ago', () => {
  const tries = new RecentTries(limit, 2);
  waits(tries, 'a', [0, 0, 0]);
  waits(tries, 'b', [0, 0, 0]);
  waits(tries, 'a', [1]);
  waits(tries, 'c', [1]);
  expect(tries.waitFor('a', at(2))).toBeGreaterThan(0);
  expect(tries.waitFor('b', at(2))).toBe(0);
});
