import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { run } from '../../src/cli/run.ts';

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
const fileWith = (text: string): string => {
  const file = join(folder, `${text.length}.json`);
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

  it('reads an attempt from the standard input, with the same exit code as a program', () => {
    const { status, stdout } = spawnSync(process.execPath, ['src/cli/underlap.ts', 'mark', '-'], {
      input: JSON.stringify(attempt),
      encoding: 'utf8',
    });
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toHaveProperty('nearestOrder');
  });
});
