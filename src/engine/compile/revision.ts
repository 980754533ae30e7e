/**
 * A name for exactly this text: 64-bit FNV-1a over its UTF-8 bytes, as 16 hexadecimal digits (RFC
 * 9923). It tells one edition from another and is no proof against forgery. The product with the
 * prime 2^40 + 0x1b3 is taken in 32-bit halves; what the lower half carries over comes from its own
 * halves, so that no step leaves the whole numbers of 32 bits.
 */
export function revisionOf(text: string): string {
  let high = 0xcbf29ce4 | 0;
  let low = 0x84222325 | 0;
  for (const byte of new TextEncoder().encode(text)) {
    const mixed = low ^ byte;
    const carry = ((mixed >>> 16) * 0x1b3 + (((mixed & 0xffff) * 0x1b3) >>> 16)) >>> 16;
    low = Math.imul(mixed, 0x1b3);
    high = (Math.imul(high, 0x1b3) + (mixed << 8) + carry) | 0;
  }
  return [high, low].map((half) => (half >>> 0).toString(16).padStart(8, '0')).join('');
}
