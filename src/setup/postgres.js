import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { installWithApt, programAt } from './debian.js';
import { secondsSince, tell } from './run.js';

/** Debian keeps each version's programs in a folder of its own, off the path. */
const versions = '/usr/lib/postgresql';

const folders = () =>
  existsSync(versions)
    ? readdirSync(versions)
        .sort((a, b) => Number(b) - Number(a))
        .map((version) => join(versions, version, 'bin'))
    : [];

/**
 * Where a program of PostgreSQL's is: in the folder POSTGRES names, on the path, or where Debian puts it.
 * @param {string} name
 */
export const postgresProgram = (name) => {
  const named = process.env['POSTGRES'];
  return named ? join(named, name) : programAt(name, folders());
};

/**
 * Sees to the programs of PostgreSQL for the tests, which start a server of their own. Where they cannot
 * be had it says so and goes on: the tests that need them will fail.
 */
export function installPostgres() {
  if (postgresProgram('initdb') && postgresProgram('pg_ctl')) return;
  const start = Date.now();
  if (installWithApt(['postgresql'])) {
    return tell(`PostgreSQL installed with apt-get in ${secondsSince(start)}.`);
  }
  tell(
    'PostgreSQL could not be installed, so the tests on it cannot run. Install it (on Debian:\n' +
      'apt-get install postgresql) or name its programs: POSTGRES=/path/to/bin npm test',
  );
}
