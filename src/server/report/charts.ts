/** The drawings of the report, in black on white: bars for days, and a stepped profile for the year ahead. */
import { daysBetween } from '#engine/calendar.ts';
import type { Coverage } from '#engine/competence/coverage.ts';
import { column, page, type Paper } from '../worksheet/paper.ts';

const label = 26;

function frame(paper: Paper, height: number): { readonly left: number; readonly bottom: number } {
  const left = page.margin + label;
  const bottom = paper.y + height;
  paper.doc
    .lineWidth(0.8)
    .moveTo(left, bottom)
    .lineTo(page.margin + column, bottom)
    .stroke('black');
  return { left, bottom };
}

/** A bar for each number, with the greatest written at its height. */
export function bars(paper: Paper, numbers: readonly number[], height = 70): void {
  paper.need(height + 24);
  const { left, bottom } = frame(paper, height);
  const most = Math.max(1, ...numbers);
  const wide = (column - label) / numbers.length;
  numbers.forEach((number, at) => {
    const tall = (height * number) / most;
    if (tall > 0)
      paper.doc.rect(left + at * wide + 1.5, bottom - tall, wide - 3, tall).fill('#444');
    if (at % 7 === 0) paper.at(String(at + 1), bottom + 4, { size: 7, left: label + at * wide });
  });
  paper.at(String(most), paper.y - 3, { size: 8, width: label - 5, align: 'right' });
  paper.skip(height + 22);
}

/** How many hold it from the first day on, going down by steps. */
export function profile(paper: Paper, { levels, months }: Coverage, height = 54): void {
  paper.need(height + 24);
  const { left, bottom } = frame(paper, height);
  const [first, last] = [levels[0]!, levels.at(-1)!];
  const most = Math.max(1, first.people);
  const span = daysBetween(first.from, months.at(-1)!.through) + 1;
  const x = (day: typeof first.from) =>
    left + ((column - label) * daysBetween(first.from, day)) / span;
  const y = (people: number) => bottom - (height * people) / most;
  for (const { from } of months) {
    paper.doc
      .lineWidth(0.3)
      .moveTo(x(from), bottom)
      .lineTo(x(from), bottom - height)
      .stroke('#999');
    paper.at(from.slice(5, 7), bottom + 4, { size: 7, left: x(from) - page.margin });
  }
  paper.doc.lineWidth(2).moveTo(left, y(first.people));
  let before = first.people;
  for (const { from, people } of levels) {
    paper.doc.lineTo(x(from), y(before)).lineTo(x(from), y(people));
    before = people;
  }
  paper.doc.lineTo(page.margin + column, y(last.people)).stroke('black');
  paper.at(String(first.people), y(first.people) - 4, {
    size: 8,
    width: label - 5,
    align: 'right',
  });
  paper.at(String(last.people), y(last.people) - 11, { size: 8, align: 'right', bold: true });
  paper.skip(height + 22);
}
