/**
 * JPEG as ITU-T T.81 (1992), annex B, lays it out: segments after markers, and after each start of a scan
 * its coded data. One pass.
 */
import { fault, ok, type Result } from '#engine/result.ts';
import type { Cleaned, ImageFault } from './cleaned.ts';

const startOfImage = Buffer.from([0xff, 0xd8]);
const endOfImage = Buffer.from([0xff, 0xd9]);
const startOfScan = 0xda;

/** The frames that browsers draw: baseline, extended and progressive, coded by Huffman. */
const frames = [0xc0, 0xc1, 0xc2];
/** Tables of quantities and codes, and how often the decoder starts anew. */
const tables = [0xdb, 0xc4, 0xdd];

type Segment = { readonly marker: number; readonly whole: Buffer; readonly end: number };

/** The segment whose marker stands at `at`; markers may be filled up with 0xFF in front. */
function segmentAt(bytes: Buffer, at: number): Segment | undefined {
  let place = at;
  if (bytes[place] !== 0xff) return undefined;
  while (bytes[place] === 0xff) place += 1;
  const marker = bytes[place] ?? 0;
  if (marker === 0xd9) return { marker, whole: endOfImage, end: place + 1 };
  if (marker < 0xc0 || (marker >= 0xd0 && marker <= 0xd8) || place + 3 > bytes.length)
    return undefined;
  const end = place + 1 + bytes.readUInt16BE(place + 1);
  if (end < place + 3 || end > bytes.length) return undefined;
  return { marker, whole: bytes.subarray(place - 1, end), end };
}

/**
 * What of an application's segment decoding needs: the Adobe marker tells how colours are coded, the JFIF
 * one the shape of a pixel; the small picture that it may carry is cut off.
 */
function neededOf({ marker, whole }: Segment): Buffer | undefined {
  const name = whole.subarray(4, 9).toString('latin1');
  if (marker === 0xee && name === 'Adobe' && whole.length >= 16) return resized(whole, 16);
  if (marker !== 0xe0 || name !== 'JFIF\0' || whole.length < 18) return undefined;
  const kept = resized(whole, 18);
  kept.writeUInt16BE(0, 16);
  return kept;
}

function resized(whole: Buffer, length: number): Buffer {
  const kept = Buffer.from(whole.subarray(0, length));
  kept.writeUInt16BE(length - 2, 2);
  return kept;
}

/** Where the coded data ends: before a marker that is neither a stuffed 0xFF nor a restart. */
function endOfScan(bytes: Buffer, from: number): number {
  for (let at = bytes.indexOf(0xff, from); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes[at + 1] ?? 0;
    if (next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return bytes.length;
}

export function cleanJpeg(bytes: Buffer): Result<Cleaned, ImageFault> {
  const parts: Buffer[] = [startOfImage];
  let [width, height, scans] = [0, 0, 0];
  for (let at = 2; ;) {
    const segment = segmentAt(bytes, at);
    if (!segment) return fault('DAMAGED');
    const { marker, whole, end } = segment;
    at = end;
    if (frames.includes(marker) && scans === 0 && width === 0 && whole.length >= 10) {
      height = whole.readUInt16BE(5);
      width = whole.readUInt16BE(7);
      parts.push(whole);
    } else if (tables.includes(marker)) parts.push(whole);
    else if (marker === startOfScan && width > 0) {
      at = endOfScan(bytes, end);
      scans += 1;
      parts.push(whole, bytes.subarray(end, at));
    } else if (marker === 0xd9) {
      return scans > 0 ? ok({ parts: [...parts, whole], width, height }) : fault('DAMAGED');
    } else if (marker >= 0xe0) parts.push(neededOf(segment) ?? Buffer.alloc(0));
    else return fault('DAMAGED');
  }
}
