import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Linter } from 'eslint';
import { describe, expect, test } from 'vitest';

const setup = join(import.meta.dirname, '../../src/setup');
const files = readdirSync(setup).filter((name) => name.endsWith('.js'));

/** A folder whose packages are installed, with a Node of this version beside them, or none. */
function folderWith(beside?: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'underlap-setup-'));
  const lock = '{}';
  writeFileSync(join(folder, 'package-lock.json'), lock);
  mkdirSync(join(folder, 'node_modules/.bin'), { recursive: true });
  writeFileSync(
    join(folder, 'node_modules/.installed-from'),
    createHash('sha256').update(lock).digest('hex'),
  );
  if (beside !== undefined) {
    const program = join(folder, 'node_modules/.bin/node');
    writeFileSync(program, `#!/bin/sh\necho ${beside}\n`);
    chmodSync(program, 0o755);
  }
  return folder;
}

/** Makes ready in such a folder, by a Node that says it is of a version. */
function prepare(folder: string, version = process.version) {
  const disguise = join(folder, 'disguise.cjs');
  writeFileSync(
    disguise,
    `Object.defineProperty(process, 'version', { value: ${JSON.stringify(version)} });`,
  );
  const { status, stderr } = spawnSync(
    process.execPath,
    ['--require', disguise, join(setup, 'prepare.js')],
    { cwd: folder, encoding: 'utf8' },
  );
  return { status, stderr };
}

describe('truth', () => {
  test.each(['v24.0.0', 'v25.3.1', 'v100.0.0'])('Node %s beside the packages serves', (version) => {
    expect(prepare(folderWith(version), 'v18.0.0')).toEqual({ status: 0, stderr: '' });
    expect(prepare(folderWith(), version)).toEqual({ status: 0, stderr: '' });
  });

  test.each(['v23.11.1', 'v20.20.2', 'v8.17.0'])(
    'Node %s beside the packages is refused with what to do',
    (version) => {
      const { status, stderr } = prepare(folderWith(version));
      expect(status).toBe(1);
      expect(stderr).toContain(`runs on Node 24 or newer; this would run on ${version}`);
      expect(stderr).toContain('Remove\nnode_modules and run the same command again');
    },
  );

  test('a machine with an old Node and none beside the packages is told where to find one', () => {
    const { status, stderr } = prepare(folderWith(), 'v20.20.2');
    expect(status).toBe(1);
    expect(stderr).toContain('this would run on v20.20.2');
    expect(stderr).toContain('install Node 24 from https://nodejs.org');
    // The reason alone: no trace of where in the program it was found.
    expect(stderr).not.toContain('    at ');
  });

  test('a program that is no Node is refused as none', () => {
    const { status, stderr } = prepare(folderWith('""'));
    expect(status).toBe(1);
    expect(stderr).toContain('this would run on none');
  });

  // The language as of 2020, which Node 14 reads: who has an old one is told so, not shown a syntax error.
  test.each(files)('%s is read by an old Node', (name) => {
    const faults = new Linter().verify(readFileSync(join(setup, name), 'utf8'), {
      languageOptions: { ecmaVersion: 2020, sourceType: 'module' },
    });
    expect(faults).toEqual([]);
  });

  test.each(files)('%s needs nothing but Node itself', (name) => {
    const text = readFileSync(join(setup, name), 'utf8');
    const needed = [...text.matchAll(/^import .* from '([^']+)'/gm)].map(([, from]) => from ?? '');
    expect(text.match(/^import /gm)?.length ?? 0).toBe(needed.length);
    expect(needed.filter((from) => !/^(node:[a-z_/]+|\.\/[a-z]+\.js)$/.test(from))).toEqual([]);
  });
});
