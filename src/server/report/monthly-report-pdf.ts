/** A company's month as a PDF on letter paper, in black on white. The same figures give the same file. */
import PDFDocument from 'pdfkit';
import { qualificationStates } from '#engine/competence/qualification-state.ts';
import type { Language } from '#engine/text.ts';
import type { Column } from '../board/qualifications.ts';
import { bytesOf } from '../worksheet/bytes-of.ts';
import { column, type Doc, page, Paper } from '../worksheet/paper.ts';
import { sayable } from '../worksheet/sayable.ts';
import { bars, profile } from './charts.ts';
import type { Figures } from './figures.ts';
import { dayIn, monthIn, type ReportWords, reportWords, stateNames } from './report-words.ts';

export type Report = {
  readonly companyName: string;
  readonly columns: readonly Column[];
  readonly figures: Figures;
};

type Sheet = Report & {
  readonly paper: Paper;
  readonly words: ReportWords;
  readonly language: Language;
};

export async function monthlyReportPdf(report: Report, language: Language): Promise<Buffer> {
  const words = reportWords(language);
  const doc = new PDFDocument({
    size: 'LETTER',
    margin: 0,
    bufferPages: true,
    lang: language,
    displayTitle: true,
    info: {
      Title: `${words.title} ${report.figures.month.from.slice(0, 7)}`,
      CreationDate: new Date(0),
    },
  });
  const finished = bytesOf(doc);
  const sheet: Sheet = { ...report, paper: new Paper(doc), words, language };
  opening(sheet);
  states(sheet);
  practice(sheet);
  coverage(sheet);
  ending(sheet);
  jobs(sheet);
  footers(doc, sheet);
  doc.end();
  return finished;
}

const titleOf = ({ columns, language }: Sheet, scheme: string): string =>
  columns.find(({ id }) => id === scheme)?.title[language] ?? scheme;

function heading({ paper }: Sheet, text: string): void {
  paper.need(60);
  paper.skip(8);
  paper.write(text, { bold: true, size: 13, gap: 3 });
  paper.rule(1.2, { gap: 6 });
}

function opening({ paper, words, language, companyName, figures }: Sheet): void {
  paper.rule(3, { gap: 10 });
  paper.write(companyName, { size: 10, gap: 2 });
  paper.write(words.title, { bold: true, size: 21, gap: 6 });
  const { month, today, people } = figures;
  paper.write(`${words.month}: ${monthIn(language, month.from)}`, { gap: 1 });
  paper.write(`${words.asOf} ${dayIn(language, today)}`, { gap: 1 });
  paper.write(`${words.people}: ${people}`, { gap: 4 });
  paper.rule(0.8, { gap: 4 });
}

/** A row a qualification, a column a state. */
function states(sheet: Sheet): void {
  const { paper, words, language, columns, figures } = sheet;
  heading(sheet, words.states);
  const first = 120;
  const wide = (column - first) / (qualificationStates.length + 1);
  const row = (name: string, cells: readonly string[], bold: boolean): void => {
    const heights = [
      paper.heightOf(name, { size: 8, width: first - 8, bold }),
      ...cells.map((cell) => paper.heightOf(cell, { size: 7.5, width: wide - 4, bold })),
    ];
    paper.need(Math.max(...heights) + 8);
    paper.at(name, paper.y, { size: 8, width: first - 8, bold });
    cells.forEach((cell, at) => {
      paper.at(cell, paper.y, { size: 7.5, left: first + at * wide, width: wide - 4, bold });
    });
    paper.skip(Math.max(...heights) + 3);
    paper.rule(0.4, { gap: 4 });
  };
  const names = qualificationStates.map((state) => stateNames[state][language]);
  row(words.qualification, [...names, words.granted], true);
  for (const { id, title } of columns) {
    const counted = figures.states.get(id) ?? {};
    const numbers = qualificationStates.map((state) => counted[state] ?? 0);
    row(title[language], [...numbers, figures.granted.get(id) ?? 0].map(String), false);
  }
}

function practice(sheet: Sheet): void {
  const { paper, words, figures } = sheet;
  heading(sheet, words.practice);
  const attempts = figures.practice.reduce((sum, count) => sum + count, 0);
  paper.write(`${attempts} ${words.attempts}, ${figures.practised} ${words.practised}`, { gap: 8 });
  bars(paper, figures.practice);
}

function coverage(sheet: Sheet): void {
  const { paper, words, language, columns, figures } = sheet;
  heading(sheet, words.coverage);
  for (const { id, title } of columns) {
    const covered = figures.coverage.get(id);
    if (!covered) continue;
    paper.need(96);
    paper.write(title[language], { bold: true, size: 9, gap: 10 });
    profile(paper, covered);
  }
}

function ending(sheet: Sheet): void {
  const { paper, words, language, figures } = sheet;
  heading(sheet, words.ending);
  if (figures.ending.length === 0) paper.write(words.noEnding);
  for (const { name, crewName, scheme, until } of figures.ending) {
    const line = [dayIn(language, until), name, crewName, titleOf(sheet, scheme)];
    paper.need(18);
    paper.write(line.filter(Boolean).join(' · '), { size: 9, gap: 3 });
  }
}

function jobs(sheet: Sheet): void {
  const { paper, words, figures } = sheet;
  heading(sheet, words.jobs);
  if (figures.shortJobs.length === 0) paper.write(words.noJobs);
  for (const { title, empty } of figures.shortJobs) {
    paper.need(18);
    paper.write(`${title} · ${empty} ${words.empty}`, { size: 9, gap: 3 });
  }
}

function footers(doc: Doc, { words, companyName }: Sheet): void {
  const { start, count } = doc.bufferedPageRange();
  for (let at = start; at < start + count; at += 1) {
    doc.switchToPage(at);
    const y = page.height - page.margin - 18;
    doc.font('Helvetica').fontSize(7).fillColor('black');
    const options = { width: column, lineBreak: false } as const;
    doc.text(sayable(`${companyName} · ${words.title}`), page.margin, y, options);
    const number = `${words.page} ${at - start + 1} ${words.of} ${count}`;
    doc.text(sayable(number), page.margin, y, { ...options, align: 'right' });
    doc.text(sayable(words.governs), page.margin, y + 10, options);
  }
}
