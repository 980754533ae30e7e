/** What stands on the paper of a certificate, and the pen it is drawn with. */
import PDFDocument from 'pdfkit';
import type { Scope } from '#engine/certificate/scope.ts';
import type { Language } from '#engine/text.ts';
import { qrOf } from '../people/qr.ts';
import type { Doc } from '../worksheet/paper.ts';
import { sayable } from '../worksheet/sayable.ts';
import type { PassedPart } from './issues.ts';

export type OnPaper = {
  readonly name: string;
  readonly issuer: string;
  readonly scope: Scope;
  readonly passed: readonly PassedPart[];
  readonly grantedOn: string;
  readonly validUntil: string;
  readonly issue: number;
  readonly address: string;
  readonly isDemo: boolean;
};

export const papers = ['letter', 'a4'] as const;
export type PaperSize = (typeof papers)[number];

/** Both languages are those of North American job sites, where paper is letter. */
export const usualPaper: Readonly<Record<Language, PaperSize>> = { en: 'letter', es: 'letter' };

/** The first day that PDF readers count from: the same certificate is the same file to the last byte. */
const always = new Date(0);

export const docOf = (
  title: string,
  { size, layout }: { readonly size: PaperSize; readonly layout: 'portrait' | 'landscape' },
  language: Language,
): Doc =>
  new PDFDocument({
    size: size === 'a4' ? 'A4' : 'LETTER',
    layout,
    margin: 0,
    lang: language,
    displayTitle: true,
    info: { Title: title, CreationDate: always },
  });

/** What the doc writes, once it ends. */
export function finished(doc: Doc): Promise<Buffer> {
  const chunks: Buffer[] = [];
  return new Promise((resolve, reject) => {
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
    doc.end();
  });
}

export type Look = {
  readonly size?: number;
  readonly bold?: boolean;
  readonly width?: number;
  readonly align?: 'left' | 'center' | 'right';
  /** Of letters, as for labels. */
  readonly spaced?: number;
  /** Lines beyond this many are cut off with three dots. */
  readonly lines?: number;
};

/** Writes at a place; returns where the next line may begin. */
export function write(doc: Doc, text: string, x: number, y: number, look: Look = {}): number {
  const { size = 10, bold = false, width = 400, align = 'left', spaced = 0, lines } = look;
  doc
    .font(bold ? 'Helvetica-Bold' : 'Helvetica')
    .fontSize(size)
    .fillColor('black');
  const said = sayable(text);
  const options = { width, align, lineGap: size * 0.18, characterSpacing: spaced };
  const line = doc.currentLineHeight(true) + size * 0.18;
  const height = lines ? { height: lines * line - 0.1, ellipsis: true } : {};
  doc.text(said, x, y, { ...options, ...height });
  const full = doc.heightOfString(said, options);
  return y + Math.min(full, lines ? lines * line : full);
}

/** The largest size, down to a least one, at which a text stands in one line. */
export function sizeFor(
  doc: Doc,
  text: string,
  width: number,
  most: number,
  least: number,
): number {
  doc.font('Helvetica-Bold').fontSize(most);
  const wide = doc.widthOfString(sayable(text));
  return Math.max(least, Math.min(most, (0.985 * most * width) / wide));
}

export const label = (doc: Doc, text: string, x: number, y: number, width: number): number =>
  write(doc, text.toUpperCase(), x, y, { size: 6.5, bold: true, width, spaced: 0.6 });

/** With the four modules of quiet zone around it, within the side that is given. */
export function drawQr(doc: Doc, text: string, x: number, y: number, side: number): void {
  const { size, path } = qrOf(text);
  const module = side / (size + 8);
  doc.save();
  doc.translate(x + 4 * module, y + 4 * module).scale(module);
  doc.path(path).fill('black');
  doc.restore();
}

/** A band of the hatch of a membrane in section. */
export function hatch(doc: Doc, x: number, y: number, width: number, height: number): void {
  doc.save();
  doc.rect(x, y, width, height).clip();
  doc.lineWidth(0.6);
  for (let at = x - height; at < x + width; at += 5) {
    doc.moveTo(at, y + height).lineTo(at + height, y);
  }
  doc.stroke('black');
  doc.restore();
  doc.lineWidth(0.8).rect(x, y, width, height).stroke('black');
}
