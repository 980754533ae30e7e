/** Base64 with the alphabet for addresses and without padding (RFC 4648, 2006, section 5). */
import { fault, ok, type Result } from '#engine/result.ts';

export function toBase64url(bytes: Uint8Array): string {
  let plain = '';
  for (const byte of bytes) plain += String.fromCharCode(byte);
  return btoa(plain).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

/** The last characters that stand for one or two bytes: those whose bits left over are zero. */
const endings: Readonly<Record<number, RegExp>> = { 2: /[AQgw]$/, 3: /[AEIMQUYcgkosw048]$/ };

/** Strict: one text for the same bytes, so blanks, padding and bits left over are refused. */
export function fromBase64url(text: string): Result<Uint8Array<ArrayBuffer>, 'NOT_BASE64URL'> {
  const ending = endings[text.length % 4];
  const isWhole = text.length % 4 !== 1 && (!ending || ending.test(text));
  if (!isWhole || !/^[\w-]*$/.test(text)) return fault('NOT_BASE64URL');
  const plain = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  const bytes = new Uint8Array(plain.length);
  for (let at = 0; at < plain.length; at += 1) bytes[at] = plain.charCodeAt(at);
  return ok(bytes);
}
