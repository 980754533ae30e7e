/** The code on paper, read back from the file as a scanner would sample it: module by module. */
import QRCode from 'qrcode';
import { describe, expect, test } from 'vitest';
import { languages } from '#engine/text.ts';
import { cardPdf } from '#server/certificates/card-pdf.ts';
import { certificatePdf } from '#server/certificates/certificate-pdf.ts';
import type { OnPaper } from '#server/certificates/on-paper.ts';
import { qrOf } from '#server/people/qr.ts';
import { certified } from '../../engine/credential/certified.ts';
import { streamsOf } from '../worksheet/pdf-text.ts';

const onPaper: OnPaper = {
  ...certified,
  issuer: 'North Wall',
  validUntil: certified.until,
  issue: 2,
  isDemo: false,
};

const number = String.raw`(-?[\d.]+)`;
/** A module or several in a row: right, down one, back to where it began, closed. */
const bar = new RegExp(
  String.raw`${number} ${number} m\s+${number} \2 l\s+\3 ${number} l\s+\1 \4 l\s+h`,
  'g',
);

/** The dark modules, as `column row`, and where the code stands: the last two moves of the pen before it. */
function codeIn(pdf: Buffer) {
  const drawn = streamsOf(pdf).join('\n');
  const bars = [...drawn.matchAll(bar)].map((match) => match.slice(1).map(Number));
  const dark = bars.flatMap(([left = 0, top = 0, right = 0, bottom = 0]) =>
    bottom - top === 1
      ? Array.from({ length: right - left }, (_, at) => `${left + at} ${top}`)
      : [],
  );
  const [, scale] = /([\d.]+) 0 0 \1 0 0 cm\s+0 0 m/.exec(drawn) ?? [];
  return { dark, module: Number(scale) };
}

describe.each(languages)('in %s', (language) => {
  describe.each([
    ['the certificate', certificatePdf],
    ['the card', cardPdf],
  ] as const)('%s', (_, make) => {
    test('carries the code of its verification address, each module of it and no other', async () => {
      const { dark, module } = codeIn(await make(onPaper, language, 'letter'));
      const { modules } = QRCode.create(onPaper.address, { errorCorrectionLevel: 'M' });
      const wanted = Array.from({ length: modules.size ** 2 }, (_, at) => at)
        .filter((at) => modules.data[at])
        .map((at) => `${at % modules.size} ${Math.floor(at / modules.size)}`);
      expect(qrOf(onPaper.address).size).toBe(modules.size);
      expect(dark).toEqual(wanted);
      // In points: a module of 0.25 mm is what a phone still reads from a hand's distance (common practice).
      expect(module).toBeGreaterThan((0.25 / 25.4) * 72);
    });

    test('carries another for another address', async () => {
      const { dark } = codeIn(await make(onPaper, language, 'letter'));
      const address = onPaper.address.replace(/A$/, 'B');
      const other = codeIn(await make({ ...onPaper, address }, language, 'letter'));
      expect(other.dark).not.toEqual(dark);
    });
  });
});
