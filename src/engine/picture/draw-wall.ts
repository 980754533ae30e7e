import type { Sequence } from '#engine/method/sequence.ts';
import type { Language, Text } from '#engine/text.ts';
import type { Drawing, Keynote, Part, View } from './drawing.ts';
import { marksOf, withMarks } from './marks.ts';
import { partsOf } from './parts.ts';
import { run } from './run.ts';
import { seamView } from './seam-view.ts';
import { section } from './section.ts';
import { sheetView } from './sheet-view.ts';
import { wallOf } from './wall.ts';
import type { Work } from './work.ts';

/**
 * Draws the wall of a sequence as the cards placed so far leave it, right or wrong. Linear in the
 * layers, but for what later sheets hide, where it is their square. The same work gives the same
 * drawing.
 */
export function drawWall(sequence: Sequence, work: Work): Drawing {
  const wall = wallOf(sequence, work);
  const marks = marksOf(wall);
  const views = [section(wall), run(wall), seamView(wall), sheetView(wall)]
    .filter((view): view is View => view !== undefined)
    .map((view) => withMarks(view, marks));
  const parts = partsOf(wall, views, marks);
  return {
    title: sequence.method.title,
    facts: sequence.method.site.flatMap(({ id, name, values }) => {
      const answer = values.find((value) => value.id === sequence.site[id]);
      return answer ? [{ name, value: answer.name }] : [];
    }),
    views: views.map((view) => ({
      ...view,
      says: saidOf(view, parts),
      keynotes: onceEach(view.keynotes),
    })),
    parts,
  };
}

/** One balloon for each part. */
const onceEach = (keynotes: readonly Keynote[]): readonly Keynote[] =>
  [
    ...new Map(keynotes.toReversed().map((keynote) => [keynote.part, keynote])).values(),
  ].toReversed();

/** The view in a sentence: what it is, and what it shows. */
function saidOf(view: View, parts: readonly Part[]): Text {
  const shown = new Set(view.shapes.map(({ part }) => part));
  const names = parts.filter(({ id }) => shown.has(id)).map(({ name }) => name);
  const say = (language: Language): string =>
    `${view.title[language]}: ${names.map((name) => name[language]).join('; ')}.`;
  return { en: say('en'), es: say('es') };
}
