/** A certificate as one sheet of a drawing set: a frame with its zones, the field, and the title block. */
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

type Box = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

const margin = 30;
const block = 186;
const pad = 26;

export async function certificatePdf(
  certificate: OnPaper,
  language: Language,
  size: PaperSize,
): Promise<Buffer> {
  const words = paperWords(language);
  const title = `${words.certificate} · ${certificate.scope.title[language]}`;
  const doc = docOf(title, { size, layout: 'landscape' }, language);
  const { width, height } = doc.page;
  const frame = { left: margin, top: margin, right: width - margin, bottom: height - margin };
  drawFrame(doc, frame);
  const split = frame.right - block;
  doc.lineWidth(1.6).moveTo(split, frame.top).lineTo(split, frame.bottom).stroke('black');
  field(doc, certificate, { ...frame, right: split }, language, words);
  titleBlock(doc, certificate, { ...frame, left: split }, language, words);
  return finished(doc);
}

/** Zones along the edges, as a drawing sheet has them to say where something stands. */
function drawFrame(doc: Doc, { left, top, right, bottom }: Box): void {
  doc
    .lineWidth(2.4)
    .rect(left, top, right - left, bottom - top)
    .stroke('black');
  doc
    .lineWidth(0.6)
    .rect(left - 12, top - 12, right - left + 24, bottom - top + 24)
    .stroke('black');
  const across = (right - left) / 4;
  const down = (bottom - top) / 3;
  const mark = { size: 6.5, width: 12, align: 'center' } as const;
  for (const place of [0, 1, 2, 3]) {
    const x = left + across * place;
    for (const y of [top - 12, bottom]) {
      if (place > 0)
        doc
          .moveTo(x, y)
          .lineTo(x, y + 12)
          .stroke('black');
      write(doc, String(place + 1), x + across / 2 - 6, y + 3.5, mark);
    }
  }
  for (const place of [0, 1, 2]) {
    const y = top + down * place;
    for (const x of [left - 12, right]) {
      if (place > 0)
        doc
          .moveTo(x, y)
          .lineTo(x + 12, y)
          .stroke('black');
      write(doc, 'ABC'[place]!, x, y + down / 2 - 4, mark);
    }
  }
}

function field(
  doc: Doc,
  { name: full, scope, passed, isDemo }: OnPaper,
  { left, top, right, bottom }: Box,
  language: Language,
  words: PaperWords,
): void {
  const x = left + pad;
  const width = right - left - 2 * pad;
  const name = nameOnPaper(full);
  let y = write(doc, words.certificate.toUpperCase(), x, top + 20, {
    size: 15,
    bold: true,
    width,
    spaced: 3,
  });
  hatch(doc, x, y + 3, width, 9);
  y = isDemo ? write(doc, words.demo, x, y + 18, { size: 10, bold: true, width }) - 8 : y + 10;
  y = write(doc, words.for, x, y + 16, { size: 10.5, width });
  y = write(doc, name, x, y + 3, { size: sizeFor(doc, name, width, 30, 15), bold: true, width });
  y = write(doc, words.passed, x, y + 2, { size: 10.5, width });
  y = write(doc, scope.title[language], x, y + 3, { size: 19, bold: true, width });
  y = write(doc, scope.purpose[language], x, y + 3, { size: 9.5, width });
  y = label(doc, words.covers, x, y + 11, width);
  for (const wall of scope.walls) {
    y = write(doc, `–  ${wallWords(wall, language)}`, x, y + 1, { size: 9, width });
  }
  y = label(doc, words.examined, x, y + 10, width);
  for (const { id, title, evidences } of scope.parts) {
    const on = passed.find(({ part }) => part === id)?.on;
    const day = on ? ` (${words.passedOn} ${dayOnPaper(on, language)})` : '';
    y = write(doc, `${title[language]}${day}`, x, y + 3, { size: 9, bold: true, width });
    y = write(doc, evidences[language], x, y, { size: 8.5, width });
  }
  // From the foot up, so that it stands at the same place on every certificate.
  const note = scope.note[language];
  doc.font('Helvetica').fontSize(8);
  const start = bottom - 14 - doc.heightOfString(note, { width, lineGap: 1.44 });
  doc
    .lineWidth(0.6)
    .moveTo(x, start - 17)
    .lineTo(x + width, start - 17)
    .stroke('black');
  label(doc, words.governs, x, start - 11, width);
  write(doc, note, x, start, { size: 8, width });
}

function titleBlock(
  doc: Doc,
  certificate: OnPaper,
  { left, top, right, bottom }: Box,
  language: Language,
  words: PaperWords,
): void {
  const { issuer, scope, grantedOn, validUntil, issue, address } = certificate;
  const x = left + 12;
  const width = right - left - 24;
  const side = block - 36;
  drawQr(doc, address, left + (block - side) / 2, top + 6, side);
  const y = write(doc, words.verify, x, top + side + 8, { size: 8, width });
  write(doc, address.replace(/^https?:\/\//, ''), x, y + 3, { size: 6.5, width });
  const cells = [
    { name: words.holder, value: nameOnPaper(certificate.name), bold: true },
    { name: words.scheme, value: scope.title[language], bold: true },
    { name: words.issuer, value: issuer, bold: false },
    { name: words.granted, value: dayOnPaper(grantedOn, language), bold: false },
    { name: words.until, value: dayOnPaper(validUntil, language), bold: true },
    { name: `${words.issue} · ${words.sheet}`, value: `${issue} · 1/1`, bold: false },
  ];
  const high = 40;
  const start = bottom - high * cells.length;
  cells.forEach(({ name, value, bold }, place) => {
    const at = start + high * place;
    doc
      .lineWidth(place === 0 ? 1.6 : 0.8)
      .moveTo(left, at)
      .lineTo(right, at)
      .stroke('black');
    const line = label(doc, name, x, at + 6, width);
    write(doc, value, x, line + 1, { size: value.length > 27 ? 9 : 11, bold, width, lines: 2 });
  });
}
