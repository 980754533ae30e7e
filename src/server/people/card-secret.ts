import { createHash, randomBytes } from 'node:crypto';

const bits = 128;
// RFC 4648 (2006), section 6, in small letters: no 0, 1, 8 or 9 to be taken for a letter.
const letters = 'abcdefghijklmnopqrstuvwxyz234567';
const bitsOfLetter = 5;

/** 128 random bits in 26 letters and digits, in groups that can be read off a card and typed. */
export function freshSecret(): string {
  let rest = BigInt(`0x${randomBytes(bits / 8).toString('hex')}`);
  let text = '';
  for (let done = 0; done < bits; done += bitsOfLetter) {
    text += letters[Number(rest & 31n)];
    rest >>= 5n;
  }
  return text.replace(/(.{5})(?=.{5})/g, '$1-');
}

/** What is kept of a secret: from 128 random bits nobody finds the way back, so it needs no salt. */
export const digestOf = (secret: string): string =>
  createHash('sha256')
    .update(secret.toLowerCase().replace(/[^a-z2-7]/g, ''))
    .digest('hex');
