import { timingSafeEqual } from 'node:crypto';
import { secret } from '../database/secret.ts';
import type { Db } from '../database/open-database.ts';

const length = 10;

/**
 * What whoever started the server can read and nobody else: it stands in the server's window, and lets
 * one set up the first company.
 */
export async function setUpCode(db: Db): Promise<string> {
  const code = (await secret(db, 'set-up')).replace(/[^A-Za-z0-9]/g, '').toUpperCase();
  return code.slice(0, length).replace(/(.{5})(?=.)/g, '$1-');
}

export async function isSetUpCode(db: Db, given: string): Promise<boolean> {
  const plain = (text: string) => Buffer.from(text.replace(/[^A-Za-z0-9]/g, '').toUpperCase());
  const [right, said] = [plain(await setUpCode(db)), plain(given)];
  return right.length === said.length && timingSafeEqual(right, said);
}
