import QRCode from 'qrcode';
import { describe, expect, test } from 'vitest';
import { qrOf } from '#server/people/qr.ts';

const address = 'https://underlap.example/card/abcde-fghij-klmno-pqrst-uvwxyz';

describe('truth', () => {
  test('the path covers every dark module and no light one', () => {
    const { size, path } = qrOf(address);
    const dark = new Set<string>();
    for (const [, column, row, width] of path.matchAll(/M(\d+) (\d+)h(\d+)v1H\d+z/g)) {
      for (let n = 0; n < Number(width); n += 1) dark.add(`${Number(column) + n} ${row}`);
    }
    const { modules } = QRCode.create(address, { errorCorrectionLevel: 'M' });
    expect(size).toBe(modules.size);
    for (let row = 0; row < size; row += 1) {
      for (let column = 0; column < size; column += 1) {
        expect(dark.has(`${column} ${row}`)).toBe(Boolean(modules.get(row, column)));
      }
    }
  });

  test('three corners carry the finder of ISO/IEC 18004: seven modules, ring, core', () => {
    const { size, path } = qrOf(address);
    for (const corner of [
      `M0 0h7v1H0z`,
      `M${size - 7} 0h7v1H${size - 7}z`,
      `M0 ${size - 7}h7v1H0z`,
    ]) {
      expect(path).toContain(corner);
    }
  });
});
