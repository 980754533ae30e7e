import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { brokenCases, soundFolder } from '../content/fixtures.ts';

const underlap = async (...args: readonly string[]) => {
  let out = '';
  let beside = '';
  const code = await run(args, {
    out: (text) => (out += text),
    beside: (text) => (beside += text),
  });
  return { code, out, beside, result: out === '' ? undefined : (JSON.parse(out) as unknown) };
};

const folder = mkdtempSync(join(tmpdir(), 'underlap-'));
let files = 0;
const fileWith = (text: string): string => {
  files += 1;
  const file = join(folder, `${files}.json`);
  writeFileSync(file, text);
  return file;
};

const attempt = {
  method: 'base-of-wall',
  site: { backing: 'steel-stud' },
  steps: [
    { step: 'prime-wall', minute: 0 },
    { step: 'snap-line', settings: { 'turn-up': '7 in' }, minute: 1 },
  ],
};

describe('underlap orders', () => {
  it('counts the correct orders of a wall', async () => {
    const { code, result } = await underlap('orders', 'base-of-wall', '--site', 'joint=seam');
    expect(code).toBe(0);
    expect(result).toEqual({ steps: 26, orders: '1680', ideals: 52 });
  });

  it.each([
    [['orders']],
    [['orders', 'base-of-house']],
    [['orders', 'base-of-wall', '--site', 'joint']],
    [['orders', 'base-of-wall', '--site', 'joint=glued']],
    [['orders', 'base-of-wall', '--sight', 'joint=seam']],
  ])('calls %j misuse, prints no result and says how to ask', async (args) => {
    const { code, out, beside } = await underlap(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(beside).toMatch(/usage: .*orders METHOD/);
  });
});

describe('underlap mark', () => {
  it('prints the review of an attempt', async () => {
    const { code, result } = await underlap('mark', fileWith(JSON.stringify(attempt)));
    expect(code).toBe(0);
    expect(result).toMatchObject({
      outcome: expect.stringMatching(/rework|tear-out/) as string,
      deviations: expect.arrayContaining([
        expect.objectContaining({ kind: 'out-of-order', step: 'snap-line', places: 1 }),
        expect.objectContaining({ kind: 'out-of-tolerance', setting: 'turn-up' }),
      ]) as unknown[],
    });
  });

  it('marks nothing where a fault stands in the file, and names its place', async () => {
    const steps = [{ step: 'snap-lime' }];
    const { code, result, beside } = await underlap(
      'mark',
      fileWith(JSON.stringify({ ...attempt, steps })),
    );
    expect(code).toBe(1);
    expect(result).toMatchObject({ faults: [{ code: 'UNKNOWN_STEP', path: 'steps[0].step' }] });
    expect(beside).toContain('steps[0].step');
  });

  it('says of a file that is no JSON that it is none', async () => {
    const { code, result } = await underlap('mark', fileWith('{"method": '));
    expect(code).toBe(1);
    expect(result).toMatchObject({ faults: [{ code: 'NOT_AN_ATTEMPT' }] });
  });

  it('calls a file that is not there misuse', async () => {
    expect(await underlap('mark', join(folder, 'none.json'))).toMatchObject({ code: 2, out: '' });
  });

  it('holds the settings to the data sheet that the attempt names', async () => {
    const built = {
      method: 'tiny-wall',
      site: {},
      steps: [{ step: 'prime' }, { step: 'hang', settings: { 'turn-up': '9 in' } }],
    };
    const under = async (dataSheet?: string) => {
      const file = fileWith(JSON.stringify({ ...built, dataSheet }));
      const { code, result } = await underlap('mark', file, '--content', soundFolder);
      expect(code).toBe(0);
      return result;
    };
    // At least 8 in by the one sheet, at least 10 in by the other; 1 in is 127/5000 m.
    const [own, named, changed] = [await under(), await under('tiny'), await under('changed')];
    expect(own).toMatchObject({ score: 100, outcome: 'accept', deviations: [] });
    expect(named).toEqual(own);
    expect(changed).toMatchObject({
      outcome: 'tear-out',
      deviations: [
        {
          kind: 'out-of-tolerance',
          step: 'hang',
          setting: 'turn-up',
          given: '1143/5000 m',
          allowed: { 'at-least': '127/500 m' },
        },
      ],
    });
  });

  it('reads an attempt from the standard input, with the same exit code as a program', () => {
    const { status, stdout } = spawnSync(process.execPath, ['src/cli/underlap.ts', 'mark', '-'], {
      input: JSON.stringify(attempt),
      encoding: 'utf8',
    });
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toHaveProperty('nearestOrder');
  });
});

describe.each(brokenCases().filter(({ code }) => code === 'CIRCULAR_ORDER'))(
  'with a method whose order is circular ($name)',
  ({ name, files: content, announced }) => {
    const circular = join(folder, name);
    for (const { path, text } of content) {
      mkdirSync(dirname(join(circular, path)), { recursive: true });
      writeFileSync(join(circular, path), text);
    }
    const built = (method: string) =>
      fileWith(JSON.stringify({ method, site: {}, steps: [{ step: 'prime' }] }));

    it.each([
      ['orders', 'the method', ['broken']],
      ['orders', 'another', ['tiny-wall']],
      ['mark', 'the method', [built('broken')]],
      ['mark', 'another', [built('tiny-wall')]],
      ['takeoff', 'a family', ['tiny', '--seed', '1']],
    ])('%s of %s ends with 1, names the place and prints no result', async (command, _, args) => {
      const { code, out, beside } = await underlap(command, ...args, '--content', circular);
      expect({ code, out }).toEqual({ code: 1, out: '' });
      expect(announced).toHaveLength(1);
      const [{ file, line, column } = { file: '', line: 0, column: 0 }] = announced;
      expect(beside).toContain(`${file}:${line}:${column}`);
      expect(beside).toContain('CIRCULAR_ORDER');
    });
  },
);
