import { describe, expect, test } from 'vitest';
import { examinersVerdict, panelVerdict } from '#engine/statistics/examiners-verdict.ts';

describe('what is said of two examiners', () => {
  test.each([
    [
      [
        [20, 9],
        [8, 2],
      ],
      'too-few-cases',
    ],
    [
      [
        [90, 0],
        [0, 0],
      ],
      'nothing-to-tell',
    ],
    [
      [
        [95, 5],
        [5, 95],
      ],
      'agree',
    ],
    [
      [
        [20, 5],
        [5, 20],
      ],
      'unsure',
    ],
    [
      [
        [45, 15],
        [25, 15],
      ],
      'agree-too-little',
    ],
  ])('%j: %s', (counts, standing) => {
    expect(examinersVerdict(counts).standing).toBe(standing);
  });

  test('one case fewer than are needed gives no figure', () => {
    expect(
      examinersVerdict([
        [19, 0],
        [0, 20],
      ]),
    ).toEqual({ standing: 'too-few-cases', have: 39, need: 40 });
    expect(
      examinersVerdict([
        [20, 0],
        [0, 20],
      ]),
    ).toMatchObject({ standing: 'agree', interval: { low: 1, high: 1 } });
  });

  test('disagreements that weigh more count for more', () => {
    const counts = [
      [20, 6, 0],
      [6, 20, 6],
      [0, 6, 20],
    ];
    const near = [
      [0, 1, 4],
      [1, 0, 1],
      [4, 1, 0],
    ];
    const [plain, weighted] = [examinersVerdict(counts), examinersVerdict(counts, near)];
    if (!('kappa' in plain) || !('kappa' in weighted)) throw new Error('no figure');
    expect(weighted.kappa.kappa).toBeGreaterThan(plain.kappa.kappa + 0.1);
  });
});

describe('what is said of a panel', () => {
  const judge = [0.5, 0.75, 0.25];

  test('four judges set no cut, five do', () => {
    expect(panelVerdict(Array(4).fill(judge))).toEqual({ enough: false, have: 4, need: 5 });
    expect(panelVerdict(Array(5).fill(judge))).toMatchObject({
      enough: true,
      value: { ok: true, value: { sd: 0 } },
    });
  });
});
