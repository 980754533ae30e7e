import { accessSync, constants, existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { run } from './run.js';

/**
 * Where a program of the machine is.
 * @param {string} name
 * @param {readonly string[]} [elsewhere] folders that are not on the path
 */
export const programAt = (name, elsewhere = []) =>
  [...(process.env['PATH'] ?? '').split(delimiter), ...elsewhere]
    .map((folder) => join(folder, name))
    .find((file) => {
      try {
        accessSync(file, constants.X_OK);
        return true;
      } catch {
        return false;
      }
    });

const isDebian = () =>
  existsSync('/etc/os-release') && /^ID=debian$/m.test(readFileSync('/etc/os-release', 'utf8'));

/**
 * Installs packages of Debian's where that is allowed; true when it went well.
 * @param {readonly string[]} packages
 */
export const installWithApt = (packages) =>
  isDebian() &&
  process.getuid?.() === 0 &&
  programAt('apt-get') !== undefined &&
  run('apt-get', ['update', '-qq']) &&
  run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], {
    DEBIAN_FRONTEND: 'noninteractive',
  });
