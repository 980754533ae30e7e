/** What a server needs of the machine it runs on. */
import { accessSync, constants, existsSync, statfsSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { FaultyContentError, openContent } from '../content.ts';
import type { Settings } from '../settings.ts';
import { type Finding, ill, well } from './finding.ts';

const leastNode = 24;
const megabyte = 1024 * 1024;
/** Room for a year of a crew's attempts, and for the log of writes while a backup is made. */
const leastRoom = 200 * megabyte;

export const nodeCheck = (version = process.versions.node): Finding =>
  Number(version.split('.')[0]) >= leastNode
    ? well('node', version)
    : ill('node', version, `Install Node.js ${leastNode} or newer, or start with npm start.`);

/** The folder, or the nearest one above it that is there. */
const nearest = (folder: string): string =>
  existsSync(folder) || dirname(folder) === folder ? folder : nearest(dirname(folder));

const isWritable = (folder: string): boolean => {
  try {
    accessSync(folder, constants.W_OK | constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

export function folderCheck({ folder }: Pick<Settings, 'folder'>): Finding {
  const wanted = resolve(folder);
  const there = nearest(wanted);
  if (!statSync(there).isDirectory()) {
    return ill('data folder', `${there} is no folder`, 'Set DATA_DIR to a folder.');
  }
  if (!isWritable(there)) {
    const cure = `Let this user write there (chown), or set DATA_DIR to another folder.`;
    return ill('data folder', `${there} cannot be written to`, cure);
  }
  if (there !== wanted) return well('data folder', `${wanted} is made at the first start`);
  const open = process.platform === 'win32' ? 0 : statSync(wanted).mode & 0o077;
  return open === 0
    ? well('data folder', wanted)
    : ill('data folder', `others of this machine may look into ${wanted}`, `chmod 700 ${wanted}`);
}

export function roomCheck({ folder }: Pick<Settings, 'folder'>): Finding {
  const { bavail, bsize } = statfsSync(nearest(resolve(folder)));
  const free = bavail * bsize;
  const found = `${Math.floor(free / megabyte)} MB free`;
  return free >= leastRoom
    ? well('disk', found)
    : ill('disk', found, `Make room: at least ${leastRoom / megabyte} MB should be free.`);
}

export function contentCheck(folder?: string): Finding {
  try {
    return well('content', `${openContent(folder).methods.size} methods`);
  } catch (error) {
    const count = error instanceof FaultyContentError ? error.diagnostics.length : 0;
    const found = count > 0 ? `${count} faults` : 'it cannot be read';
    return ill('content', found, 'Run: npm run -s underlap -- check');
  }
}

export function buildCheck(handler = new URL('../../../build/handler.js', import.meta.url)) {
  return existsSync(handler)
    ? well('build', 'there')
    : ill('build', 'the app is not built', 'Run: npm start');
}
