import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { Trouble, runQuietly } from './run.js';

// The first release line that runs TypeScript as it is and has a database built in, unflagged.
const oldestMajor = 24;

/** @param {string} version as `node --version` prints it */
const major = (version) => Number(/^v(\d+)\./.exec(version)?.[1] ?? 0);

/** The Node that npm scripts run on: the one installed beside the packages, or the machine's own. */
export function runtime() {
  const installed = resolve(
    'node_modules/.bin',
    process.platform === 'win32' ? 'node.cmd' : 'node',
  );
  return existsSync(installed) ? installed : process.execPath;
}

export function requireRuntime() {
  const node = runtime();
  const version =
    node === process.execPath ? process.version : runQuietly(node, ['--version']).output;
  if (major(version.trim()) >= oldestMajor) return;
  throw new Trouble(
    `Underlap runs on Node ${oldestMajor} or newer; this would run on ${version.trim() || 'none'} (${node}).\n` +
      `On Linux (x64, arm64) and Windows (x64) the right one is installed with the packages. Remove\n` +
      `node_modules and run the same command again; if npm was told to omit optional packages, lift\n` +
      `that. On other systems install Node ${oldestMajor} from https://nodejs.org and run it again.`,
  );
}
