/**
 * Runs the measurements in this folder, one after another, each in a process of its own:
 *
 *   npm run bench             all of them
 *   npm run bench -- marking  those whose name holds "marking"
 */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';

const here = import.meta.dirname;
const wanted = process.argv[2] ?? '';
const files = readdirSync(here).filter(
  (name) =>
    name.endsWith('.ts') && name !== basename(import.meta.filename) && name.includes(wanted),
);
if (files.length === 0) {
  console.error(
    wanted === ''
      ? 'tests/bench holds no measurement.'
      : `No measurement in tests/bench is named like "${wanted}".`,
  );
  process.exitCode = 1;
}

for (const file of files) {
  console.log(`\n${file}`);
  if (
    spawnSync(process.execPath, [join(here, file), ...process.argv.slice(3)], { stdio: 'inherit' })
      .status !== 0
  ) {
    process.exitCode = 1;
  }
}
