/** PNG as W3C's specification (third edition, 2025) lays it out: a signature, and chunks with a checksum each. */
import { crc32 } from 'node:zlib';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Cleaned, ImageFault } from './cleaned.ts';

const signatureBytes = 8;

/** What is drawn, and in which colours. Texts, times and moving frames are not here. */
const needed = ['IHDR', 'PLTE', 'IDAT', 'IEND', 'tRNS', 'gAMA', 'cHRM', 'sRGB', 'sBIT', 'bKGD'];

type Chunk = { readonly name: string; readonly whole: Buffer; readonly end: number };

function chunkAt(bytes: Buffer, at: number): Chunk | undefined {
  if (at + 12 > bytes.length) return undefined;
  const end = at + 12 + bytes.readUInt32BE(at);
  if (end > bytes.length) return undefined;
  const checksum = crc32(bytes.subarray(at + 4, end - 4));
  if (checksum !== bytes.readUInt32BE(end - 4)) return undefined;
  const name = bytes.subarray(at + 4, at + 8).toString('latin1');
  return { name, whole: bytes.subarray(at, end), end };
}

/** A chunk without which, by its capital letter, the picture cannot be drawn. */
const isCritical = (name: string): boolean => /^[A-Z]/.test(name);

export function cleanPng(bytes: Buffer): Result<Cleaned, ImageFault> {
  const parts: Buffer[] = [bytes.subarray(0, signatureBytes)];
  const first = chunkAt(bytes, signatureBytes);
  if (first?.name !== 'IHDR' || first.whole.length !== 25) return fault('DAMAGED');
  const [width, height] = [first.whole.readUInt32BE(8), first.whole.readUInt32BE(12)];
  let hasData = false;
  for (let at = signatureBytes; ;) {
    const chunk = chunkAt(bytes, at);
    if (!chunk) return fault('DAMAGED');
    const isNeeded = needed.includes(chunk.name);
    if (!isNeeded && isCritical(chunk.name)) return fault('DAMAGED');
    if (isNeeded) parts.push(chunk.whole);
    hasData ||= chunk.name === 'IDAT';
    if (chunk.name === 'IEND') return hasData ? ok({ parts, width, height }) : fault('DAMAGED');
    at = chunk.end;
  }
}
