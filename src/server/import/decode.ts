/** The bytes of a file as text; or why they are none, with the place and how it reads there. */
import type { FileFault } from '#engine/record/import-plan.ts';
import { fault, ok, type Result } from '#engine/result.ts';

export const mostBytes = 1024 * 1024;

const newline = 0x0a;
const longestSample = 80;

const startsWith = (bytes: Uint8Array, ...start: readonly number[]): boolean =>
  start.every((byte, index) => bytes[index] === byte);

const isUtf8 = (bytes: Uint8Array): boolean => {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
};

function notUtf8(bytes: Uint8Array): FileFault {
  let line = 1;
  for (let from = 0; from < bytes.length; line += 1) {
    const end = bytes.indexOf(newline, from);
    const part = bytes.subarray(from, end < 0 ? bytes.length : end);
    if (!isUtf8(part)) {
      const reads = new TextDecoder('windows-1252').decode(part).trim().slice(0, longestSample);
      return { code: 'NOT_UTF8', line, reads };
    }
    from += part.length + 1;
  }
  return { code: 'NOT_UTF8', line: 1, reads: '' };
}

/** UTF-8 with or without a mark of byte order; UTF-16 with one, as spreadsheets write "Unicode text". */
export function decoded(bytes: Uint8Array): Result<string, FileFault> {
  if (bytes.length > mostBytes) return fault({ code: 'TOO_LARGE', most: mostBytes });
  if (startsWith(bytes, 0x50, 0x4b, 3, 4) || startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0)) {
    return fault({ code: 'WORKBOOK' });
  }
  if (startsWith(bytes, 0xff, 0xfe)) return ok(new TextDecoder('utf-16le').decode(bytes));
  if (startsWith(bytes, 0xfe, 0xff)) return ok(new TextDecoder('utf-16be').decode(bytes));
  return isUtf8(bytes) ? ok(new TextDecoder('utf-8').decode(bytes)) : fault(notUtf8(bytes));
}

/** Windows-1252 for the bytes 0x80 to 0x9f; the rest are as in Unicode. */
const high = [
  ...new TextDecoder('windows-1252').decode(Uint8Array.from({ length: 32 }, (_, n) => 0x80 + n)),
];

/**
 * What a cell was before a program took its UTF-8 for Windows-1252, as in "LÃ³pez" for "López"; undefined
 * where it does not look so.
 */
export function unmisread(cell: string): string | undefined {
  if (!/[\u00c2-\u00f4][\u0080-\u00bf\u0152-\u2122]/.test(cell)) return undefined;
  const bytes: number[] = [];
  for (const sign of cell) {
    const code = sign.charCodeAt(0);
    const byte = high.includes(sign) ? 0x80 + high.indexOf(sign) : code;
    if (byte > 0xff || sign.length > 1) return undefined;
    bytes.push(byte);
  }
  const array = Uint8Array.from(bytes);
  return isUtf8(array) ? new TextDecoder('utf-8').decode(array) : undefined;
}
