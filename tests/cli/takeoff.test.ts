import { describe, expect, it } from 'vitest';
import type { MarkReport, ProblemReport } from '#engine/takeoff/report.ts';
import { run } from '../../src/cli/run.ts';
import { soundFolder } from '../content/fixtures.ts';

const underlap = async (...args: readonly string[]) => {
  let out = '';
  let beside = '';
  const code = await run(['takeoff', ...args], {
    out: (text) => (out += text),
    beside: (text) => (beside += text),
  });
  return { code, out, beside };
};

const problems = async (...args: readonly string[]) =>
  JSON.parse((await underlap(...args)).out) as readonly ProblemReport[];

describe('underlap takeoff', () => {
  it('writes as many problems as asked, each with answers, slips and working', async () => {
    const made = await problems('fasteners-one-bar', '--seed', '7', '--count', '3');
    expect(made.map(({ seed }) => seed)).toEqual(['7', '8', '9']);
    for (const { family, parts, pictures } of made) {
      expect(family).toBe('fasteners-one-bar');
      expect(pictures.map(({ kind }) => kind)).toEqual(['bar-elevation']);
      expect(parts.map(({ part }) => part)).toEqual(['fasteners', 'spacing']);
      for (const part of parts) {
        expect(part.slips.length).toBeGreaterThan(0);
        expect(part.worked.at(-1)?.kind).toBe('answer');
        expect(part.choices.filter(({ right }) => right)).toHaveLength(1);
      }
    }
  });

  it('the same seed writes the same, also as one of several', async () => {
    const [, second] = await problems('weeps-in-wall', '--seed', '4', '--count', '2');
    expect([second]).toEqual(await problems('weeps-in-wall', '--seed', '5'));
    const [, named] = await problems('weeps-in-wall', '--seed', 'monday', '--count', '2');
    expect([named]).toEqual(await problems('weeps-in-wall', '--seed', 'monday/2'));
  });

  it('judges an answer to each part, and follows an earlier wrong one', async () => {
    // 97 1/4 in: 13 fasteners, 7 15/16 in apart; 12 of them would be 8 21/32 in apart.
    const args = ['fasteners-one-bar', '--seed', '9', '--answer', '12', '--answer', '8 21/32 in'];
    const { code, out } = await underlap(...args);
    const { marks, verdict } = JSON.parse(out) as MarkReport & {
      readonly marks: readonly MarkReport[];
    };
    expect(verdict).toBe('right');
    expect(code).toBe(0);
    expect(marks.map(({ verdict, followed, slips }) => [verdict, followed, slips])).toEqual([
      ['slip', false, ['one-too-few']],
      ['right', true, []],
    ]);
    expect(marks[0]?.read).toEqual({ en: '12 fasteners', es: '12 fijadores' });
  });

  it('says of an answer that cannot be read how to write it, and exits with 1', async () => {
    const { code, beside, out } = await underlap('bead-yield', '--seed', '1', '--answer', 'lots');
    expect(code).toBe(1);
    expect(beside).toContain('is not a number');
    expect(JSON.parse(out)).toMatchObject({ marks: [{ verdict: null }, { verdict: null }] });
  });

  it('takes content from another folder', async () => {
    const [tiny] = await problems('tiny', '--seed', '1', '--content', soundFolder);
    expect(tiny?.title.en).toBe('A tiny problem');
  });

  it.each([
    [[], 'Name one family'],
    [['bead-yield'], 'Give a seed'],
    [['roofs', '--seed', '1'], 'There is no family "roofs"'],
    [['constructor', '--seed', '1'], 'There is no family'],
    [['bead-yield', '--seed', '1', '--count', '0'], '--count takes a whole number'],
    [['bead-yield', '--seed', '1', '--count', '1e9'], '--count takes a whole number'],
    [['bead-yield', '--seed', '1', '--count', '2', '--answer', '3'], 'An answer is to one problem'],
    [
      ['bead-yield', '--seed', '1', '--answer', '1', '--answer', '1', '--answer', '1'],
      'more answers',
    ],
    [['bead-yield', '--seed', '1', '--shape', 'round'], 'shape'],
  ] as const)('%j is misuse', async (args, said) => {
    const { code, out, beside } = await underlap(...(args as readonly string[]));
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(beside).toContain(said);
  });
});
