import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isBarred, usualCap, type BankItem } from '#engine/exam/bank.ts';
import { drawForm } from '#engine/exam/form.ts';
import { targetOf } from '#engine/exam/pools.ts';
import { spreadOf, spreadOver } from '#engine/exam/spread.ts';
import { randomFrom, shuffle } from '#engine/random.ts';
import { anyBank, blueprint, evenBank, formFrom } from './small-bank.ts';

const faultsOf = (bank: readonly BankItem[], drawn = 0) => {
  const form = drawForm({ bank, blueprint, seed: 1, drawn });
  return form.ok ? [] : form.error;
};

const idsOf = (form: { readonly items: readonly BankItem[] }) => form.items.map(({ id }) => id);

describe('truth', () => {
  test('mean and standard deviation of 2, 4, 4, 4, 5, 5, 7, 9 are 5 and 2', () => {
    expect(spreadOf([2, 4, 4, 4, 5, 5, 7, 9])).toEqual({ mean: 5, spread: 2 });
  });

  test('the target weighs each topic with the number of its questions', () => {
    const item = (id: string, topic: string, difficulty: number): BankItem => ({
      id,
      topic,
      kind: 'choose-one',
      difficulty,
      exposures: 0,
    });
    const bank = [item('a', 'easy', 0.9), item('b', 'hard', 0.3), item('c', 'hard', 0.5)];
    const target = targetOf(
      bank,
      new Map([
        ['easy', 1],
        ['hard', 3],
      ]),
    );
    expect(target.mean).toBeCloseTo((0.9 + 3 * 0.4) / 4, 12);
    // Within: 3/4 of 0.1^2; between: 1/4 of 0.375^2 and 3/4 of 0.125^2.
    expect(target.spread).toBeCloseTo(
      Math.sqrt(0.75 * 0.01 + 0.25 * 0.375 ** 2 + 0.75 * 0.125 ** 2),
      12,
    );
  });

  test('at a cap of one half, the third form holds nothing that was on two', () => {
    const seen = (exposures: number): BankItem => ({ ...evenBank(1)[0]!, exposures });
    expect([0, 1, 2, 3].map((n) => isBarred(seen(n), 2, 0.5))).toEqual([false, false, true, true]);
  });

  test('every topic with too few questions is named, with how many there are', () => {
    expect(faultsOf(evenBank(3).filter(({ topic }) => topic !== 'seam'))).toEqual([
      { code: 'TOO_FEW', topic: 'seam', wanted: 2, there: 0 },
      { code: 'TOO_FEW', topic: 'toe', wanted: 4, there: 3 },
    ]);
  });

  test('questions seen too often are told from questions that are not there', () => {
    const bank = evenBank(5).map((item, index) => ({ ...item, exposures: index % 5 < 3 ? 6 : 0 }));
    expect(faultsOf(bank, 10)).toEqual([
      { code: 'SEEN_TOO_OFTEN', topic: 'prime', wanted: 3, there: 2 },
      { code: 'SEEN_TOO_OFTEN', topic: 'toe', wanted: 4, there: 2 },
    ]);
  });

  test('an item that stands in the bank twice is a fault', () => {
    expect(faultsOf([...evenBank(5), evenBank(5)[0]!])).toEqual([
      { code: 'ITEM_TWICE', id: 'prime-0' },
    ]);
  });

  test('where all of a topic are enemies, no form is drawn, and it is said why', () => {
    const bank = evenBank(6).map((item) => ({
      ...item,
      enemies:
        item.topic === 'seam' ? ['seam-0', 'seam-1', 'seam-2', 'seam-3', 'seam-4', 'seam-5'] : [],
    }));
    expect(faultsOf(bank)).toEqual([{ code: 'ENEMIES' }]);
  });

  test('a cap that is no share is a mistake of the program', () => {
    expect(() => formFrom({ cap: 0 })).toThrow(RangeError);
    expect(() => formFrom({ cap: 1.1 })).toThrow(RangeError);
  });

  test('what the candidate had before is left out while there is enough else', () => {
    const bank = evenBank(8);
    const first = formFrom({ bank });
    const seen = new Set(idsOf(first));
    const second = formFrom({ bank, seed: 2, drawn: 1, seen });
    // Eight questions a topic leave 5, 6 and 4 that are new.
    expect(idsOf(second).filter((id) => seen.has(id))).toEqual([]);
    const all = new Set(bank.map(({ id }) => id));
    expect(formFrom({ bank, seed: 3, seen: all }).items).toHaveLength(9);
  });

  test('over 300 forms the mean difficulties lie closer together than by plain drawing', () => {
    const bank = evenBank(30);
    const seeds = Array.from({ length: 300 }, (_, seed) => seed);
    const matched = spreadOver(seeds.map((seed) => formFrom({ bank, seed })));
    const plain = spreadOver(
      seeds.map((seed) => {
        const random = randomFrom(seed);
        const items = [...blueprint].flatMap(([topic, count]) =>
          shuffle(
            random,
            bank.filter((item) => item.topic === topic),
          ).slice(0, count),
        );
        return { difficulty: spreadOf(items.map(({ difficulty }) => difficulty)) };
      }),
    );
    expect(matched.forms).toBe(300);
    expect(matched.spread).toBeLessThan(plain.spread / 10);
    expect(matched.most - matched.least).toBeLessThan(0.01);
  });
});

describe('laws', () => {
  test('a form holds what the blueprint asks for, each question once, and no enemies', () => {
    fc.assert(
      fc.property(anyBank(9, 16), fc.nat(), (bank, seed) => {
        const armed = bank.map((item, index) => ({
          ...item,
          enemies: index % 5 === 0 ? [bank[(index + 4) % bank.length]!.id] : [],
        }));
        const form = formFrom({ bank: armed, seed, drawn: 20 });
        expect(new Set(idsOf(form)).size).toBe(9);
        for (const [topic, count] of blueprint) {
          expect(form.items.filter((item) => item.topic === topic)).toHaveLength(count);
        }
        const ids = new Set(idsOf(form));
        for (const { enemies } of form.items) {
          expect(enemies?.some((id) => ids.has(id))).toBe(false);
        }
      }),
    );
  });

  test('the same seed gives the same form, whatever was drawn before', () => {
    fc.assert(
      fc.property(anyBank(9, 12), fc.nat(), (bank, seed) => {
        const first = formFrom({ bank, seed, drawn: 20 });
        formFrom({ bank, seed: seed + 1, drawn: 20 });
        expect(formFrom({ bank, seed, drawn: 20 })).toEqual(first);
      }),
    );
  });

  test('the order in which the bank was read does not matter', () => {
    fc.assert(
      fc.property(anyBank(9, 12), fc.nat(), (bank, seed) => {
        const first = formFrom({ bank, seed, drawn: 20 });
        const mixed = shuffle(randomFrom(`${seed}/mixed`), bank);
        expect(formFrom({ bank: mixed, seed, drawn: 20 })).toEqual(first);
      }),
    );
  });

  test('what is reported of the difficulty is that of the items', () => {
    fc.assert(
      fc.property(anyBank(9, 12), fc.nat(), (bank, seed) => {
        const { items, difficulty, target } = formFrom({ bank, seed, drawn: 20 });
        const again = spreadOf(items.map((item) => item.difficulty));
        expect(difficulty.mean).toBeCloseTo(again.mean, 12);
        expect(difficulty.spread).toBeCloseTo(again.spread, 12);
        const aim = targetOf(bank, blueprint);
        expect(target.mean).toBeCloseTo(aim.mean, 12);
        expect(target.spread).toBeCloseTo(aim.spread, 12);
      }),
    );
  });

  test('with (1 + 1/cap) items a question, forms can be drawn for ever and none is over the cap', () => {
    for (const cap of [0.25, usualCap, 1]) {
      // The largest topic asks for four.
      let bank = evenBank(Math.ceil(4 * (1 + 1 / cap)));
      for (let drawn = 0; drawn < 120; drawn += 1) {
        const form = formFrom({ bank, seed: drawn, drawn, cap });
        const on = new Set(idsOf(form));
        bank = bank.map((item) =>
          on.has(item.id) ? { ...item, exposures: item.exposures + 1 } : item,
        );
        for (const { exposures } of bank) {
          expect(exposures).toBeLessThanOrEqual(Math.ceil(cap * (drawn + 1)));
        }
      }
    }
  });

  test('a question that was seen often is drawn less often than one that was not', () => {
    const bank = evenBank(20).map((item, index) => ({
      ...item,
      exposures: index % 2 === 0 ? 8 : 0,
    }));
    const counts = { seen: 0, fresh: 0 };
    for (let seed = 0; seed < 200; seed += 1) {
      for (const { exposures } of formFrom({ bank, seed, drawn: 40 }).items) {
        counts[exposures > 0 ? 'seen' : 'fresh'] += 1;
      }
    }
    expect(counts.seen * 10).toBeLessThan(counts.fresh);
  });
});
