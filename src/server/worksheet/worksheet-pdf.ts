/**
 * A worksheet as a PDF: the problems, then the answers on pages of their own. Nothing in it depends on
 * when or where it is made, so the same sheet is the same file to the last byte.
 */
import PDFDocument from 'pdfkit';
import type { WorksheetProblem } from '#engine/takeoff/worksheet.ts';
import type { Language } from '#engine/text.ts';
import { bytesOf } from './bytes-of.ts';
import { keyBlock } from './key-block.ts';
import { column, page, Paper, type Doc } from './paper.ts';
import { problemBlock } from './problem-block.ts';
import { sayable } from './sayable.ts';
import { wordsIn, type Words } from './words.ts';

export type Worksheet = {
  readonly problems: readonly WorksheetProblem[];
  readonly seed: string;
  /** Of the content that it was made from. */
  readonly revision: string;
};

/** The first day that PDF readers count from. */
const always = new Date(0);

export async function worksheetPdf(sheet: Worksheet, language: Language): Promise<Buffer> {
  const words = wordsIn(language);
  const doc = new PDFDocument({
    size: 'LETTER',
    margin: 0,
    bufferPages: true,
    lang: language,
    displayTitle: true,
    info: { Title: `${words.title} ${sheet.seed}`, CreationDate: always },
  });
  const finished = bytesOf(doc);
  const paper = new Paper(doc);
  opening(paper, words, sheet);
  sheet.problems.forEach((problem, place) =>
    problemBlock(paper, place + 1, problem, language, words),
  );
  paper.turn();
  paper.write(words.key, { bold: true, size: 20, gap: 4 });
  paper.write(`${words.sheet} ${sheet.seed}`, { size: 9, gap: 10 });
  sheet.problems.forEach((problem, place) => keyBlock(paper, place + 1, problem, language, words));
  footers(doc, words, sheet);
  doc.end();
  return finished;
}

/** A title block, with lines for who works it and when. */
function opening(paper: Paper, words: Words, { seed }: Worksheet): void {
  const { doc } = paper;
  const [top, high, side] = [page.margin, 74, 190];
  const split = page.margin + column - side;
  doc.lineWidth(1.2).rect(page.margin, top, column, high).stroke('black');
  doc
    .lineWidth(3)
    .moveTo(page.margin, top)
    .lineTo(page.margin + column, top)
    .stroke('black');
  doc
    .lineWidth(1)
    .moveTo(split, top)
    .lineTo(split, top + high)
    .moveTo(split, top + high / 2)
    .lineTo(page.margin + column, top + high / 2)
    .stroke('black');
  const width = column - side - 28;
  paper.at(words.title, top + 14, { bold: true, size: 19, left: 14, width });
  paper.at(words.how, top + 44, { size: 9, left: 14, width });
  const label = (text: string, y: number): void =>
    paper.at(text, y, { size: 7.5, left: column - side + 8, width: side - 16 });
  label(words.name, top + 6);
  label(words.date, top + high / 2 + 5);
  paper.at(`${words.sheet} ${seed}`, top + high / 2 + 5, {
    size: 7.5,
    left: column - side + 8,
    width: side - 16,
    align: 'right',
  });
  paper.y = top + high + 22;
}

function footers(doc: Doc, words: Words, { seed, revision }: Worksheet): void {
  const { start, count } = doc.bufferedPageRange();
  for (let at = start; at < start + count; at += 1) {
    doc.switchToPage(at);
    const y = page.height - page.margin - 18;
    const line = (text: string, align: 'left' | 'right', from: number): void => {
      doc.font('Helvetica').fontSize(7).fillColor('black');
      doc.text(sayable(text), page.margin, from, { width: column, align, lineBreak: false });
    };
    doc
      .lineWidth(0.7)
      .moveTo(page.margin, y - 6)
      .lineTo(page.margin + column, y - 6)
      .stroke('black');
    line(`${words.title} ${seed} · ${words.content} ${revision.slice(0, 8)}`, 'left', y);
    line(`${words.page} ${at - start + 1} ${words.of} ${count}`, 'right', y);
    line(words.governs, 'left', y + 10);
  }
}
