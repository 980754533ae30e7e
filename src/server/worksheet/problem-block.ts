/** One problem on the sheet: its words and drawing, what is asked, and room to work. */
import { draw } from '#engine/sketch/draw.ts';
import { conditionNames, type Chart, type Row } from '#engine/takeoff/chart.ts';
import type { Answered } from '#engine/takeoff/family.ts';
import { namesAskedIn } from '#engine/takeoff/fill-text.ts';
import { problemOf, type Problem } from '#engine/takeoff/problem.ts';
import type { WorksheetProblem } from '#engine/takeoff/worksheet.ts';
import type { Language } from '#engine/text.ts';
import { paintSketch } from './paint-sketch.ts';
import { column, page, type Paper } from './paper.ts';
import type { Words } from './words.ts';

const gutter = 30;
const picture = 218;
const beside = { left: gutter + picture + 20, width: column - gutter - picture - 20 };

/** Room to work under each question; a long list of them gets less, and less is computed there. */
const roomFor = (parts: number): number => (parts > 4 ? 18 : 44);

export function problemHead(
  paper: Paper,
  number: number,
  { seed }: WorksheetProblem,
  title: string,
  words: Words,
): void {
  paper.rule(2, { gap: 8 });
  paper.at(String(number), paper.y - 3, { bold: true, size: 17, width: gutter });
  paper.at(`${words.problem} ${seed}`, paper.y + 2, { size: 8, align: 'right' });
  paper.write(title, { bold: true, size: 12, left: gutter, width: column - gutter - 70, gap: 4 });
}

export function problemBlock(
  paper: Paper,
  number: number,
  problem: WorksheetProblem,
  language: Language,
  words: Words,
): void {
  const stated = problemOf(problem.instance);
  const intro = stated.intro[language];
  const also = alsoGiven(problem, stated, language);
  const views = stated.pictures.map((drawn) => {
    const sketch = draw(drawn);
    return { sketch, high: (sketch.height * picture) / sketch.width };
  });
  const parts = problem.instance.parts;
  const asks = stated.asks.map(({ ask }, place) => ({
    text: `${parts.length > 1 ? `${String.fromCharCode(97 + place)})  ` : ''}${ask[language]}`,
    answer: parts[place]!.part.answer,
  }));
  const isBeside = views.length > 0 && asks.length <= 4;
  // Beside the questions one stands over the other, above them side by side.
  const highs = views.map(({ high }) => high);
  const high = isBeside ? highs.reduce((sum, each) => sum + each, 0) : Math.max(0, ...highs);
  const place = isBeside ? beside : { left: gutter, width: column - gutter };
  const room = roomFor(asks.length);
  const heights = asks.map(({ text }) => paper.heightOf(text, place) + room + 18);
  const notes = [
    ...(also ? [also] : []),
    ...stated.charts.map((chart) => chartLine(chart, language)),
  ];
  const told =
    paper.heightOf(intro, { left: gutter }) +
    notes.reduce((sum, note) => sum + paper.heightOf(note, small), 0);
  const asked = heights.reduce((sum, each) => sum + each, 0);
  const whole = 40 + told + (isBeside ? Math.max(high + 14, asked) : high + 20 + heights[0]!);
  paper.need(whole);
  problemHead(paper, number, problem, stated.title[language], words);
  paper.write(intro, { left: gutter, gap: 4 });
  for (const note of notes) paper.write(note, { ...small, gap: 4 });
  const top = paper.y + 2;
  views.forEach(({ sketch }, index) => {
    const above = isBeside ? highs.slice(0, index).reduce((sum, each) => sum + each, 0) : 0;
    const left = page.margin + gutter + (isBeside ? 0 : index * (picture + gutter));
    paintSketch(paper.doc, sketch, language, { left, top: top + above, wide: picture });
  });
  if (views.length > 0) {
    paper.at(words.scale, top + high, { left: gutter, width: picture, size: 7, align: 'right' });
    if (!isBeside) paper.y = top + high + 14;
  }
  asks.forEach(({ text, answer }, index) => {
    if (!isBeside) paper.need(heights[index]!);
    paper.write(text, place);
    paper.skip(room);
    answerLine(paper, answer, language, words, place);
  });
  paper.y = Math.max(paper.y, isBeside ? top + high + 14 : 0) + 12;
}

/** `Touch-dry time by surface: 40 °F 6 min · 70 °F 2 min; times, by relative humidity: 60 % 1 ...` */
function chartLine({ name, by, rows, times }: Chart, language: Language): string {
  const list = (each: readonly Row[]): string =>
    each.map(({ at, value }) => `${at[language]} = ${value[language]}`).join(' · ');
  const head = (condition: Chart['by']): string => conditionNames[condition][language];
  const first = `${name[language]} (${head(by)}): ${list(rows)}`;
  return times ? `${first}  × (${head(times.by)}): ${list(times.rows)}` : first;
}

const small = { left: gutter, size: 8.5 };

/** What the words of the problem do not say already. */
function alsoGiven(
  { instance }: WorksheetProblem,
  { givens, numbers }: Problem,
  language: Language,
): string | undefined {
  const said = new Set(namesAskedIn(instance.takeoff.family.intro, language));
  const rest = [...givens, ...numbers].filter(({ id }) => !said.has(id));
  if (rest.length === 0) return undefined;
  const list = rest.map(({ name, value }) => `${name[language]} ${value[language]}`);
  return list.join(' · ');
}

function answerLine(
  paper: Paper,
  answer: Answered,
  language: Language,
  words: Words,
  { left, width }: { readonly left: number; readonly width: number },
): void {
  if (answer.kind === 'decision') {
    [answer.yes, answer.no].forEach((words) => {
      paper.doc
        .lineWidth(1)
        .rect(page.margin + left, paper.y, 8, 8)
        .stroke('black');
      paper.write(words[language], { left: left + 14, width: width - 14, gap: 3 });
    });
    paper.skip(6);
    return;
  }
  paper.at(words.answer, paper.y, { left, width, size: 8 });
  paper.skip(11);
  paper.rule(0.7, { left: left + 44, width: Math.min(width - 44, 200), gap: 8 });
}
