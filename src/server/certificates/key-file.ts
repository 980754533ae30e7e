/**
 * The private key, in a file apart from the records and from their backups, which nobody else on the
 * machine may read. A key that was lost is no harm to what it signed; one that got out is.
 */
import {
  linkSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { freshKey, type PrivateKey } from './signature.ts';

export const keyFile = (folder: string): string => join(folder, 'signing-key.json');

const form = z.object({
  kty: z.literal('OKP'),
  crv: z.literal('Ed25519'),
  x: z.string(),
  d: z.string(),
});

/** The message says how to mend it. */
export class KeyFileError extends Error {
  override readonly name = 'KeyFileError';
}

const others = 0o077;

/** Undefined where there is none yet. Throws a KeyFileError where it may not be used. */
export function readKey(folder: string): PrivateKey | undefined {
  const file = keyFile(folder);
  const found = statSync(file, { throwIfNoEntry: false });
  if (!found) return undefined;
  // Windows keeps no such rights.
  if (process.platform !== 'win32' && (found.mode & others) !== 0) {
    throw new KeyFileError(`Others may read ${file}. Run: chmod 600 ${file}`);
  }
  const key = form.safeParse(parsed(readFileSync(file, 'utf8')));
  if (key.success) return key.data;
  throw new KeyFileError(`${file} holds no key. Take it away, and a new one is made.`);
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

function writeAside(folder: string, key: PrivateKey): string {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const aside = `${keyFile(folder)}.${process.pid}`;
  rmSync(aside, { force: true });
  writeFileSync(aside, `${JSON.stringify(key)}\n`, { mode: 0o600, flush: true });
  return aside;
}

/** The key of a folder, made if need be; of processes that make it at once one wins. */
export function keyIn(folder: string): PrivateKey {
  const before = readKey(folder);
  if (before) return before;
  const aside = writeAside(folder, freshKey());
  try {
    linkSync(aside, keyFile(folder));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  } finally {
    rmSync(aside, { force: true });
  }
  const key = readKey(folder);
  if (!key) throw new KeyFileError(`No key could be kept in ${folder}.`);
  return key;
}

/** Puts another key in the place of the one there, all at once. */
export const replaceKey = (folder: string, key: PrivateKey): void =>
  renameSync(writeAside(folder, key), keyFile(folder));
