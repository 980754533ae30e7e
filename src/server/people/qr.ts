/** A QR code (ISO/IEC 18004:2015) as one path of an SVG, black on white, a unit a module. */
import QRCode from 'qrcode';

export type Qr = {
  /** Modules along a side, without the quiet zone of four that must stay white around it. */
  readonly size: number;
  readonly path: string;
};

export function qrOf(text: string): Qr {
  // M mends 15 in 100: enough for paper that was in a pocket.
  const { modules } = QRCode.create(text, { errorCorrectionLevel: 'M' });
  const { size } = modules;
  let path = '';
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column < size; column += 1) {
      if (!modules.get(row, column)) continue;
      const start = column;
      while (column < size && modules.get(row, column)) column += 1;
      path += `M${start} ${row}h${column - start}v1H${start}z`;
    }
  }
  return { size, path };
}
