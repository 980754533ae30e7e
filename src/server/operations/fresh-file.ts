import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { OperationTrouble } from './trouble.ts';

/**
 * Writes a file that was not there, whole or not at all: under another name first, readable by its owner
 * alone, on the disk before it takes its own name. Throws an OperationTrouble where it may not.
 */
export async function freshFile<T>(
  file: string,
  write: (temporary: string) => Promise<T>,
): Promise<T> {
  const wanted = resolve(file);
  if (existsSync(wanted)) {
    throw new OperationTrouble(`${file} is there already. Choose a name that is not.`);
  }
  if (!existsSync(dirname(wanted))) {
    throw new OperationTrouble(`There is no folder ${dirname(wanted)}. Make it first.`);
  }
  const temporary = `${wanted}.${process.pid}.part`;
  try {
    closeSync(openSync(temporary, 'wx', 0o600));
    const written = await write(temporary);
    const open = openSync(temporary, 'r+');
    fsyncSync(open);
    closeSync(open);
    renameSync(temporary, wanted);
    return written;
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
}

export const bytesOf = (file: string): number => statSync(file).size;
