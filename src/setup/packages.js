import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { Trouble, run, secondsSince, tell } from './run.js';

const lock = 'package-lock.json';
// Kept inside node_modules, which npm empties first: an install cut short leaves no stamp.
const stamp = 'node_modules/.installed-from';

/** Installs what the lock names, when the lock has changed since the last time. */
export function installPackages() {
  const wanted = createHash('sha256').update(readFileSync(lock)).digest('hex');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;

  tell('Installing packages...');
  const start = Date.now();
  const args = [
    'ci',
    '--include=dev',
    '--include=optional',
    '--no-audit',
    '--no-fund',
    // Some packages ask for a newer Node than the machine's own, and get it: a warning would mislead.
    '--loglevel=error',
  ];
  const npm = process.env['npm_execpath'];
  const installed = npm
    ? run(process.execPath, [npm, ...args])
    : run(process.platform === 'win32' ? 'npm.cmd' : 'npm', args);
  if (!installed) {
    throw new Trouble(
      'The packages could not be installed. Check that this machine reaches registry.npmjs.org\n' +
        '(or the registry named in your .npmrc), then run the same command again.',
    );
  }
  writeFileSync(stamp, wanted);
  tell(`Packages installed in ${secondsSince(start)}.`);
}
