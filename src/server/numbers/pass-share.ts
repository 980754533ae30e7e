import { type Enough, fewest, ifEnough } from '#engine/statistics/enough.ts';
import { type Interval, wilson } from '#engine/statistics/wilson.ts';
import type { Sat } from './answers.ts';

export type Share = { readonly share: number; readonly interval: Interval };

export const passShare = (sat: readonly Pick<Sat, 'result'>[]): Enough<Share> =>
  ifEnough(sat.length, fewest.proportion, () => {
    const passed = sat.filter(({ result }) => result === 'passed').length;
    return { share: passed / sat.length, interval: wilson(passed, sat.length) };
  });

export type WholeScheme = { readonly sat: number; readonly passed: Enough<Share> };

/** Of those who sat every part, how many passed each of them at the first try. */
export function wholeScheme(parts: readonly (readonly Sat[])[]): WholeScheme {
  const byPerson = Map.groupBy(parts.flat(), ({ person }) => person);
  const complete = [...byPerson.values()].filter((own) => own.length === parts.length);
  const results = complete.map((own) => ({
    result: own.every(({ result }) => result === 'passed') ? 'passed' : 'failed',
  }));
  return { sat: complete.length, passed: passShare(results) };
}
