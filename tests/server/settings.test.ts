import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { settingsFrom, variables } from '#server/settings.ts';

const readme = readFileSync(join(import.meta.dirname, '../../README.md'), 'utf8');

/** The rows of the table of settings: name, meaning, default. */
const rows = [...readme.matchAll(/^\| `([A-Z_]+)` +\| (.+?) +\| (.*?) *\|$/gm)].map(
  ([, name = '', meaning = '', usual = '']) => ({ name, meaning, usual }),
);

describe('the table of settings in the README', () => {
  test('has every variable and no other, with what the settings say it means', () => {
    expect(Object.fromEntries(rows.map(({ name, meaning }) => [name, meaning]))).toEqual(variables);
  });

  test('names the defaults that are used where nothing is set', () => {
    const defaults = settingsFrom({});
    if (!defaults.ok) throw new Error(defaults.error.join());
    const { host, port, logLevel, folder } = defaults.value;
    const told = Object.fromEntries(rows.map(({ name, usual }) => [name, usual]));
    expect(told).toMatchObject({
      HOST: `\`${host}\``,
      PORT: `\`${port}\``,
      LOG_LEVEL: `\`${logLevel}\``,
      DATA_DIR: `\`${folder.slice(process.cwd().length + 1)}\``,
    });
  });
});

test('every fault of the settings is told at once, and no secret with it', () => {
  const read = settingsFrom({ PORT: 'x', LOG_LEVEL: 'loud', DATABASE_URL: 'mysql://me:word@x/y' });
  if (read.ok) throw new Error('taken');
  expect(read.error).toHaveLength(3);
  expect(read.error.join('\n')).not.toContain('word@x');
});
