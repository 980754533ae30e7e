/**
 * A photo as it is kept: of a known kind, whole, and with nothing in it but what is needed to draw it. What
 * a camera writes besides (where and when it was taken, by which device, a small copy from before it was
 * cut) is dropped, and so is whatever stands behind the end of the picture. Only parts that are known to be
 * needed are kept, so that a kind of note invented tomorrow is dropped as well.
 */
import { fault, ok, type Result } from '#engine/result.ts';
import type { Cleaned, ImageFault } from './cleaned.ts';
import { cleanJpeg } from './jpeg.ts';
import { cleanPng } from './png.ts';
import { cleanWebp } from './webp.ts';

export const imageTypes = ['image/jpeg', 'image/png', 'image/webp'] as const;
export type ImageType = (typeof imageTypes)[number];

export type CleanImage = { readonly type: ImageType; readonly bytes: Uint8Array };

const longestSide = 8192;
const mostPixels = 40_000_000;

const beginsWith = (bytes: Uint8Array, at: number, text: string): boolean =>
  Buffer.from(bytes.subarray(at, at + text.length)).toString('latin1') === text;

function kindOf(bytes: Uint8Array): ImageType | undefined {
  if (beginsWith(bytes, 0, '\xff\xd8\xff')) return 'image/jpeg';
  if (beginsWith(bytes, 0, '\x89PNG\r\n\x1a\n')) return 'image/png';
  return beginsWith(bytes, 0, 'RIFF') && beginsWith(bytes, 8, 'WEBP') ? 'image/webp' : undefined;
}

const cleaners = {
  'image/jpeg': cleanJpeg,
  'image/png': cleanPng,
  'image/webp': cleanWebp,
} as const satisfies Readonly<Record<ImageType, (bytes: Buffer) => Result<Cleaned, ImageFault>>>;

/** By what it is, whatever its sender calls it. O(bytes). */
export function cleanImage(bytes: Uint8Array): Result<CleanImage, ImageFault> {
  const type = kindOf(bytes);
  if (!type) return fault('UNKNOWN_KIND');
  const found = cleaners[type](Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  if (!found.ok) return found;
  const { parts, width, height } = found.value;
  if (width === 0 || height === 0) return fault('DAMAGED');
  if (Math.max(width, height) > longestSide || width * height > mostPixels) {
    return fault('TOO_MANY_PIXELS');
  }
  return ok({ type, bytes: Buffer.concat(parts) });
}
