// Makes ready what the other scripts need. Runs before any package is installed, on whatever Node
// the machine has, so it and what it imports use nothing but Node's own modules.
//
//   node src/setup/prepare.js             packages and the right Node
//   node src/setup/prepare.js build       ... and the built app, when a source has changed
//   node src/setup/prepare.js browser     ... and a browser for the journeys
//   node src/setup/prepare.js postgres    ... and PostgreSQL for the tests
//
// Everything is told on stderr: the output of the script that follows stays clean.
import { installBrowser } from './browser.js';
import { buildApp } from './build.js';
import { installPackages } from './packages.js';
import { installPostgres } from './postgres.js';
import { requireRuntime } from './runtime.js';
import { Trouble } from './run.js';

const wanted = process.argv.slice(2);

try {
  installPackages();
  requireRuntime();
  if (wanted.includes('build')) buildApp();
  if (wanted.includes('browser')) installBrowser();
  if (wanted.includes('postgres')) installPostgres();
} catch (error) {
  if (!(error instanceof Trouble)) throw error;
  console.error(`\n${error.message}\n`);
  process.exitCode = 1;
}
