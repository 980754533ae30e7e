import { hatches, type Hatch } from '#engine/sketch/hatches.ts';
import { lineHeight, strokeWidths } from '#engine/sketch/sketch.ts';
import type { Circle, Fill, Lettering, Path, Sketch, Weight } from '#engine/sketch/sketch.ts';
import type { Language } from '#engine/text.ts';
import type { Doc } from './paper.ts';
import { sayable } from './sayable.ts';

/** Draws a sketch in black on white, so wide from its upper left corner. */
export function paintSketch(
  doc: Doc,
  { width, marks }: Sketch,
  language: Language,
  { left, top, wide }: { readonly left: number; readonly top: number; readonly wide: number },
): void {
  doc
    .save()
    .translate(left, top)
    .scale(wide / width);
  for (const mark of marks) {
    if (mark.kind === 'lettering') letter(doc, mark, language);
    else outline(doc, mark);
  }
  doc.restore();
}

function outline(doc: Doc, mark: Path | Circle): void {
  const trace = (): Doc => {
    if (mark.kind === 'circle') return doc.circle(...mark.centre, mark.radius);
    const [first, ...others] = mark.points;
    doc.moveTo(...first!);
    for (const point of others) doc.lineTo(...point);
    return mark.closed ? doc.closePath() : doc;
  };
  if (mark.fill !== 'none') fill(doc, mark.fill, trace);
  if (mark.weight !== 'none') stroke(doc, mark.weight, mark.kind === 'path' && mark.dashed, trace);
}

function stroke(doc: Doc, weight: Weight, dashed: boolean, trace: () => Doc): void {
  doc.lineWidth(strokeWidths[weight]).lineJoin('miter');
  if (dashed) doc.dash(7, { space: 4 });
  trace().stroke('black');
  if (dashed) doc.undash();
}

function fill(doc: Doc, how: Exclude<Fill, 'none'>, trace: () => Doc): void {
  if (how === 'solid') trace().fill('black');
  else trace().fill('white');
  if (how !== 'solid' && how !== 'paper') trace().fill([pattern(doc, how), 'black']);
}

/** A hatch as a pattern in the paint of whoever uses it. */
function pattern(doc: Doc, hatch: Hatch): PDFKit.PDFTilingPattern {
  const { size, lines } = hatches[hatch];
  const strokes = lines.map(([x1, y1, x2, y2]) => `${x1} ${y1} m ${x2} ${y2} l S`).join('\n');
  return doc.pattern([0, 0, size, size], size, size, `0.6 w\n${strokes}`);
}

/** A clean strip of paper lies under it, as it crosses lines. */
function letter(doc: Doc, { at: [x, y], text, anchor, turn }: Lettering, language: Language): void {
  const words = sayable(text[language]);
  doc.font('Helvetica-Bold').fontSize(lineHeight - 1.5);
  const wide = doc.widthOfString(words);
  const left = { start: 0, middle: -wide / 2, end: -wide }[anchor];
  doc.save().translate(x, y).rotate(turn);
  doc.rect(left - 2.5, -lineHeight / 2, wide + 5, lineHeight).fill('white');
  doc.fillColor('black').text(words, left, -lineHeight / 2 + 1.5, { lineBreak: false });
  doc.restore();
}
