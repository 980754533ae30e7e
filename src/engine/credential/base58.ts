/**
 * Base 58 in the alphabet that leaves out 0, O, I and l, as multibase `z` uses it. Quadratic in the
 * length, which is that of a key or a signature.
 */
import { fault, ok, type Result } from '#engine/result.ts';

const alphabet = '123456789ABCDEFGHJKLMNPQRSTUVWXYZabcdefghijkmnopqrstuvwxyz';
const base = 58n;

/** Zero bytes in front stand as so many ones. */
export function toBase58(bytes: Uint8Array): string {
  let number = bytes.reduce((sum, byte) => sum * 256n + BigInt(byte), 0n);
  let text = '';
  for (; number > 0n; number /= base) text = alphabet[Number(number % base)]! + text;
  const zeros = bytes.findIndex((byte) => byte !== 0);
  return '1'.repeat(zeros < 0 ? bytes.length : zeros) + text;
}

export function fromBase58(text: string): Result<Uint8Array, 'NOT_BASE58'> {
  let number = 0n;
  for (const sign of text) {
    const value = alphabet.indexOf(sign);
    if (value < 0) return fault('NOT_BASE58');
    number = number * base + BigInt(value);
  }
  const bytes: number[] = [];
  for (; number > 0n; number /= 256n) bytes.unshift(Number(number % 256n));
  const [ones = ''] = /^1*/.exec(text) ?? [];
  return ok(Uint8Array.from([...Array<number>(ones.length).fill(0), ...bytes]));
}
