/**
 * A certificate as a card for the wallet, of the size ID-1 (ISO/IEC 7810: 85.60 x 53.98 mm, from memory), front
 * and back beside each other to be cut out and folded.
 */
import { wallWords } from '#engine/credential/credential.ts';
import type { Language } from '#engine/text.ts';
import type { Doc } from '../worksheet/paper.ts';
import { nameOnPaper } from './name-on-paper.ts';
import {
  docOf,
  drawQr,
  finished,
  hatch,
  label,
  type OnPaper,
  type PaperSize,
  sizeFor,
  write,
} from './on-paper.ts';
import { dayOnPaper, type PaperWords, paperWords } from './paper-words.ts';

const point = 72 / 25.4;
export const card = { width: 85.6 * point, height: 53.98 * point } as const;
const pad = 9;

export async function cardPdf(
  certificate: OnPaper,
  language: Language,
  size: PaperSize,
): Promise<Buffer> {
  const words = paperWords(language);
  const title = `${words.card} · ${certificate.scope.title[language]}`;
  const doc = docOf(title, { size, layout: 'portrait' }, language);
  const left = (doc.page.width - 2 * card.width) / 2;
  const top = 90;
  write(doc, words.cut, left, top - 26, { size: 9 });
  doc
    .lineWidth(1)
    .rect(left, top, 2 * card.width, card.height)
    .stroke('black');
  const fold = left + card.width;
  doc
    .dash(4, { space: 3 })
    .moveTo(fold, top)
    .lineTo(fold, top + card.height)
    .stroke('black');
  doc.undash();
  front(doc, certificate, left, top, language, words);
  back(doc, certificate, fold, top, language, words);
  return finished(doc);
}

function front(
  doc: Doc,
  { name: full, scope, issuer, validUntil, address, isDemo }: OnPaper,
  left: number,
  top: number,
  language: Language,
  words: PaperWords,
): void {
  const side = 78;
  const x = left + pad;
  const wide = card.width - 2 * pad;
  const beside = wide - side - 2;
  const name = nameOnPaper(full);
  write(doc, words.certificate.toUpperCase(), x, top + 9, {
    size: 8,
    bold: true,
    width: wide,
    spaced: 2,
  });
  hatch(doc, x, top + 20, wide, 5);
  const size = sizeFor(doc, name, wide, 15, 8);
  const under = write(doc, name, x, top + 31, { size, bold: true, width: wide, lines: 1 });
  let y = write(doc, scope.title[language], x, under + 1, {
    size: 10,
    bold: true,
    width: beside,
    lines: 2,
  });
  y = label(doc, words.until, x, y + 4, beside);
  y = write(doc, dayOnPaper(validUntil, language), x, y, { size: 10, bold: true, width: beside });
  y = label(doc, words.issuer, x, y + 3, beside);
  write(doc, isDemo ? words.demo : issuer, x, y, { size: 7.5, width: beside, lines: 2 });
  const right = left + card.width - pad;
  drawQr(doc, address, right - side + 6, top + card.height - side - 2, side);
}

function back(
  doc: Doc,
  { scope, grantedOn, issue, address }: OnPaper,
  left: number,
  top: number,
  language: Language,
  words: PaperWords,
): void {
  const x = left + pad;
  const width = card.width - 2 * pad;
  let y = label(doc, words.covers, x, top + 8, width);
  const walls = scope.walls.map((wall) => wallWords(wall, language)).join('; ');
  y = write(doc, walls, x, y, { size: 7, width, lines: 5 });
  y = label(doc, words.governs, x, y + 3, width);
  write(doc, scope.note[language], x, y, { size: 6.5, width, lines: 6 });
  const foot = top + card.height - 22;
  doc
    .lineWidth(0.5)
    .moveTo(x, foot)
    .lineTo(x + width, foot)
    .stroke('black');
  const dates = `${words.granted} ${dayOnPaper(grantedOn, language)} · ${words.issue} ${issue}`;
  const after = write(doc, dates, x, foot + 3, { size: 6, width });
  write(doc, `${words.scan}: ${address.replace(/^https?:\/\//, '')}`, x, after, {
    size: 4.6,
    width,
    lines: 1,
  });
}
