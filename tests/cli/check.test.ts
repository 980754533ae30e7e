import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '#engine/compile/diagnostic.ts';
import { run } from '../../src/cli/run.ts';
import { soundFolder } from '../content/fixtures.ts';

const underlap = async (...args: readonly string[]) => {
  let out = '';
  let beside = '';
  const code = await run(args, {
    out: (text) => (out += text),
    beside: (text) => (beside += text),
  });
  return { code, out, beside };
};

/** The sound content with a wrong unit in its sheet and a wrong source in its glossary. */
function brokenFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'underlap-'));
  cpSync(soundFolder, folder, { recursive: true });
  const spoil = (name: string, from: string, to: string) => {
    const path = join(folder, name);
    writeFileSync(path, readFileSync(path, 'utf8').replace(from, to));
  };
  spoil('data-sheets/tiny.yaml', 'at-least: 8 in', 'at-least: 8 inn');
  spoil('glossary/wall.yaml', 'source: a-standard', 'source: a-standart');
  return folder;
}

const broken = brokenFolder();
const here = (name: string): string => relative('', join(broken, name));

describe('underlap check', () => {
  it('says nothing but that there is nothing to say of sound content, and exits with 0', async () => {
    const { code, out, beside } = await underlap('check', '--content', soundFolder);
    expect({ code, result: JSON.parse(out) as unknown, beside }).toEqual({
      code: 0,
      result: [],
      beside: 'No faults.\n',
    });
  });

  it('writes every fault as JSON, and beside it marks the place in the line', async () => {
    const { code, out, beside } = await underlap('check', '--content', broken);
    expect(code).toBe(1);
    const faults = JSON.parse(out) as readonly Diagnostic[];
    expect(faults.map(({ code, file }) => [code, file])).toEqual([
      ['BAD_QUANTITY', here('data-sheets/tiny.yaml')],
      ['UNKNOWN_SOURCE', here('glossary/wall.yaml')],
    ]);
    expect(beside).toContain(
      [
        `${here('glossary/wall.yaml')}:12:13  UNKNOWN_SOURCE`,
        '  There is no source "a-standart".',
        '  12 |     source: a-standart',
        '     |             ^^^^^^^^^^',
        '  Write "a-standard", if that was meant.',
      ].join('\n'),
    );
    expect(beside).toMatch(/\n2 faults in 2 files\.\n$/);
  });

  it('shows the faults of the given files only, compiled with the rest', async () => {
    const one = await underlap('check', '--content', broken, join(broken, 'glossary/wall.yaml'));
    expect(one.code).toBe(1);
    expect((JSON.parse(one.out) as readonly Diagnostic[]).map(({ code }) => code)).toEqual([
      'UNKNOWN_SOURCE',
    ]);
    const none = await underlap('check', '--content', broken, join(broken, 'hazards.yaml'));
    expect([none.code, none.out]).toEqual([0, '[]\n']);
  });

  it.each([
    ['an unknown file', ['check', 'nowhere.yaml'], 'nowhere.yaml is no file of the content'],
    ['a file outside the content', ['check', 'package.json'], 'package.json is no file of'],
    ['an unknown folder', ['check', '--content', 'nowhere'], 'There is no folder nowhere.'],
    ['an unknown option', ['check', '--all'], "Unknown option '--all'"],
    ['an unknown command', ['chekc'], 'There is no command "chekc".'],
    ['no command', [], 'usage: npm run -s underlap -- <command>'],
  ])('%s is misuse: it says how to ask, and exits with 2', async (_, args, said) => {
    const { code, out, beside } = await underlap(...args);
    expect([code, out]).toEqual([2, '']);
    expect(beside).toContain(said);
    expect(beside).toContain('usage: npm run -s underlap --');
  });

  it('runs as a program of its own, results and report apart', () => {
    const program = join(import.meta.dirname, '../../src/cli/underlap.ts');
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      [program, 'check', '--content', broken],
      { encoding: 'utf8' },
    );
    expect(status).toBe(1);
    expect(JSON.parse(stdout)).toHaveLength(2);
    expect(stderr).toContain('2 faults in 2 files.');
  });
});
