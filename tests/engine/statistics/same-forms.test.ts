import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { errorOfTotals } from '#engine/statistics/error-of-totals.ts';
import { reliability } from '#engine/statistics/reliability.ts';
import { absent } from '#engine/statistics/responses.ts';
import { sameForms } from '#engine/statistics/same-forms.ts';
import { answered, lsat6 } from './lsat6.ts';

/** Ten students and ten items: core.ecu.edu/wuenschk/StatHelp/KR20.txt, which prints a KR-20 of .696. */
const ten = [
  '1111110110',
  '1011011101',
  '1111011001',
  '0010001000',
  '0000010010',
  '1110111111',
  '1101110111',
  '1111111101',
  '0101111101',
  '1101101110',
];

describe('truth', () => {
  test('the published KR-20 comes out of a form that lies between others', () => {
    const rows = ten.flatMap((row) => [`...${row}`, `${row.slice(0, 3)}..........`]);
    const asked = rows.map((_, person) =>
      person % 2 === 0 ? Array.from({ length: 10 }, (__, at) => at + 3) : [0, 1, 2],
    );
    const forms = sameForms(answered(rows), asked);
    expect(forms.map(({ persons }) => persons.length)).toEqual([10, 10]);
    const whole = forms.find(({ responses }) => responses.items === 10)!;
    const found = reliability(whole.responses);
    if (!found.ok) throw new Error(found.error.code);
    expect(found.value.kr20).toBeCloseTo(0.696347, 6);
  });

  test('of LSAT section 6 the error of totals is 0.869 right answers, by alpha 0.295', () => {
    const totals = Array.from({ length: lsat6.persons }, (_, person) =>
      lsat6.scores.subarray(person * 5, person * 5 + 5).reduce((sum, one) => sum + one, 0),
    );
    expect(errorOfTotals(totals, 0.2949971922)).toBeCloseTo(0.8690666, 6);
    const found = reliability(lsat6);
    expect(found.ok && found.value.errorOfMeasurement).toBeCloseTo(0.8690666, 6);
    expect(errorOfTotals([3], 0.5)).toBeUndefined();
  });
});

describe('laws', () => {
  test('everybody is on one form, with those who were asked the same and nobody else', () => {
    const sets = fc.array(fc.subarray([0, 1, 2, 3], { minLength: 1 }), { minLength: 1 });
    fc.assert(
      fc.property(sets, (asked) => {
        const scores = Uint8Array.from(
          asked.flatMap((own, person) =>
            [0, 1, 2, 3].map((item) => (own.includes(item) ? (person + item) % 3 : absent)),
          ),
        );
        const forms = sameForms({ persons: asked.length, items: 4, scores }, asked);
        const names = new Set(forms.map(({ persons }) => asked[persons[0]!]!.join()));
        expect(names.size).toBe(forms.length);
        expect(forms.flatMap(({ persons }) => persons).toSorted((a, b) => a - b)).toEqual([
          ...asked.keys(),
        ]);
        for (const { persons, responses } of forms) {
          const own = asked[persons[0]!]!;
          expect(responses.scores).toEqual(
            Uint8Array.from(persons.flatMap((person) => own.map((item) => (person + item) % 3))),
          );
        }
      }),
    );
  });

  test('it takes a list for each person', () => {
    expect(() => sameForms(lsat6, [])).toThrow(RangeError);
  });
});
