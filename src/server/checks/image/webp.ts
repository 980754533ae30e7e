/** WebP as RFC 9649 (2024) lays it out: chunks in a RIFF container, each filled up to an even length. */
import { fault, ok, type Result } from '#engine/result.ts';
import type { Cleaned, ImageFault } from './cleaned.ts';

const headerBytes = 12;
const needed = ['VP8 ', 'VP8L', 'VP8X', 'ALPH'];
const moving = ['ANIM', 'ANMF'];
/** Of the flags of an extended file, that it has an alpha channel; the others tell of what is dropped. */
const alphaFlag = 0x10;

type Size = { readonly width: number; readonly height: number };

function sizeOf(name: string, body: Buffer): Size | undefined {
  if (name === 'VP8L' && body.length >= 5 && body[0] === 0x2f) {
    const bits = body.readUInt32LE(1);
    return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
  }
  const isFrame = name === 'VP8 ' && body.length >= 10 && body.readUIntBE(3, 3) === 0x9d012a;
  if (!isFrame) return undefined;
  return { width: body.readUInt16LE(6) & 0x3fff, height: body.readUInt16LE(8) & 0x3fff };
}

/** The extended header without its flags of notes; undefined where it is too short. */
function plainHeader(whole: Buffer): Buffer | undefined {
  if (whole.length < 18) return undefined;
  const kept = Buffer.from(whole);
  kept[8] = (kept[8] ?? 0) & alphaFlag;
  return kept;
}

export function cleanWebp(bytes: Buffer): Result<Cleaned, ImageFault> {
  const end = bytes.length >= headerBytes ? bytes.readUInt32LE(4) + 8 : Infinity;
  if (end > bytes.length) return fault('DAMAGED');
  const chunks: Buffer[] = [];
  let size: Size | undefined;
  for (let at = headerBytes; at < end;) {
    const next = at + 8 <= end ? at + 8 + bytes.readUInt32LE(at + 4) : Infinity;
    if (next > end) return fault('DAMAGED');
    const name = bytes.subarray(at, at + 4).toString('latin1');
    if (moving.includes(name)) return fault('NOT_STILL');
    const whole = bytes.subarray(at, Math.min(next + (next % 2), end));
    const kept = name === 'VP8X' ? plainHeader(whole) : needed.includes(name) ? whole : undefined;
    if (name === 'VP8X' && !kept) return fault('DAMAGED');
    const found = sizeOf(name, bytes.subarray(at + 8, next));
    if (found && size) return fault('DAMAGED');
    size ??= found;
    if (kept) chunks.push(kept);
    at = next + (next % 2);
  }
  if (!size) return fault('DAMAGED');
  const header = Buffer.from(bytes.subarray(0, headerBytes));
  header.writeUInt32LE(4 + chunks.reduce((sum, { length }) => sum + length, 0), 4);
  return ok({ parts: [header, ...chunks], ...size });
}
