/** Base64 with the alphabet for addresses and without padding (RFC 4648, 2006, section 5). */
import { fault, ok, type Result } from '#engine/result.ts';

export const toBase64url = (bytes: Uint8Array): string =>
  btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replaceAll('=', '');

/** Strict: one text for the same bytes, so blanks, padding and bits left over are refused. */
export function fromBase64url(text: string): Result<Uint8Array<ArrayBuffer>, 'NOT_BASE64URL'> {
  if (!/^[\w-]*$/.test(text) || text.length % 4 === 1) return fault('NOT_BASE64URL');
  const plain = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  const bytes = Uint8Array.from(plain, (character) => character.charCodeAt(0));
  return toBase64url(bytes) === text ? ok(bytes) : fault('NOT_BASE64URL');
}
