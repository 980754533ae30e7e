/**
 * How long a picture takes: drawing a finished wall and setting its views on paper for a phone, beside
 * the same wall before anything is done; the processor's time in the best of several runs. Fails above
 * 16 ms, the time of one frame.
 */
import { drawWall } from '#engine/picture/draw-wall.ts';
import { layOut } from '#engine/picture/lay-out.ts';
import { type Work, noWork } from '#engine/picture/work.ts';
import { middleOf } from '#engine/method/rule.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { walls } from '../content/walls.ts';

const bound = 16;
const runs = 40;

const finished = ({ steps }: Sequence): Work => ({
  ...noWork,
  placed: steps.map(({ id, asks }) => ({
    card: id,
    state: 'dry',
    settings: new Map(
      asks.map(({ id: ask, rule, sheetNumber }) => [ask, sheetNumber.aim ?? middleOf(rule)]),
    ),
  })),
});

const timed = (work: () => unknown): number => {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
};

const best = (work: () => unknown): number =>
  Math.min(...Array.from({ length: runs }, () => timed(work)));

const redraw = (sequence: Sequence, work: Work) => {
  const drawing = drawWall(sequence, work);
  return drawing.views.map((view) => layOut(drawing, view, 328, 'en'));
};

const layersOf = ({ steps }: Sequence): number => steps.flatMap(({ draws }) => draws).length;
const byMethod = Map.groupBy(walls, ({ sequence }) => sequence.method.id);

for (const [method, ofMethod] of byMethod) {
  const { sequence } = ofMethod.reduce((a, b) =>
    layersOf(b.sequence) > layersOf(a.sequence) ? b : a,
  );
  const work = finished(sequence);
  const [whole, empty] = [best(() => redraw(sequence, work)), best(() => redraw(sequence, noWork))];
  const shapes = redraw(sequence, work).reduce((sum, sheet) => sum + sheet.shapes.length, 0);
  console.log(
    `${method}: ${layersOf(sequence)} layers, ${shapes} shapes: ${whole.toFixed(1)} ms; ` +
      `empty ${empty.toFixed(1)} ms; ratio ${(whole / empty).toFixed(1)}`,
  );
  if (whole > bound) {
    console.log(`Drawing takes more than ${bound} ms.`);
    process.exitCode = 1;
  }
}
