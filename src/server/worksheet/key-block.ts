/** The answers of one problem: each with its working, and the slips to watch for. */
import { inEach } from '#engine/takeoff/fill-text.ts';
import { filledText, problemOf, writeAnswer } from '#engine/takeoff/problem.ts';
import type { Solved } from '#engine/takeoff/instance.ts';
import { workedSolution, type WorkedLine } from '#engine/takeoff/worked.ts';
import type { WorksheetProblem } from '#engine/takeoff/worksheet.ts';
import type { Language } from '#engine/text.ts';
import type { Paper } from './paper.ts';
import { problemHead } from './problem-block.ts';
import type { Words } from './words.ts';

const left = 30;

export function keyBlock(
  paper: Paper,
  number: number,
  problem: WorksheetProblem,
  language: Language,
  words: Words,
): void {
  const { instance } = problem;
  paper.need(110);
  problemHead(paper, number, problem, problemOf(instance).title[language], words);
  instance.parts.forEach((solved, place) => {
    const letter = instance.parts.length > 1 ? `${String.fromCharCode(97 + place)})  ` : '';
    const working = workedSolution(instance, solved.part.id);
    const answer = working.at(-1)?.text[language] ?? '';
    paper.need(60);
    paper.write(`${letter}${answer}`, { bold: true, left, gap: 2 });
    for (const line of working.slice(0, -1).filter(isComputed)) {
      const text = line.text[language];
      paper.need(paper.heightOf(text, steps));
      paper.write(text, steps);
    }
    slips(paper, solved, problem, language, words);
    paper.skip(6);
  });
  paper.skip(6);
}

const steps = { left: left + 16, size: 8.5 };

const isComputed = ({ kind }: WorkedLine): boolean => kind !== 'why';

function slips(
  paper: Paper,
  { part, slips }: Solved,
  { instance }: WorksheetProblem,
  language: Language,
  words: Words,
): void {
  if (part.answer.kind === 'decision' || slips.length === 0) return;
  const lines = slips.map(({ slip, answer }) => ({
    wrong: inEach((each) => writeAnswer(part.answer, answer, each))[language],
    tell: filledText(instance, slip.tell)[language],
  }));
  paper.skip(3);
  paper.need(30);
  paper.write(words.slips, { ...quiet, bold: true, gap: 1 });
  for (const { wrong, tell } of lines) {
    paper.need(paper.heightOf(tell, told));
    paper.at(wrong, paper.y, slipped);
    paper.at(tell, paper.y, told);
    paper.skip(Math.max(paper.heightOf(wrong, slipped), paper.heightOf(tell, told)));
  }
}

const quiet = { left: left + 16, size: 7.5 };
const slipped = { ...quiet, width: 92 };
const told = { ...quiet, left: left + 112 };
