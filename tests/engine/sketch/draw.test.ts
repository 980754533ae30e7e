import { describe, expect, test } from 'vitest';
import { draw, extentOf } from '#engine/sketch/draw.ts';
import type { Sketch } from '#engine/sketch/sketch.ts';
import { measuresOf, neededMeasures, pictureKinds } from '#engine/takeoff/picture.ts';
import { drawnOf, usual } from './samples.ts';

const textsOf = ({ marks }: Sketch): readonly string[] =>
  marks.flatMap((mark) => (mark.kind === 'lettering' ? [mark.text.en] : []));

/** A sheet ends in one way: held back, or past the edge. A wait is for the learner to find. */
const written = (kind: (typeof pictureKinds)[number]) =>
  Object.entries(usual[kind]).flatMap(([measure, text]) =>
    measure === 'drip' ||
    measure === 'wait' ||
    (measure === 'projection' && usual[kind]['drip'] === 'no')
      ? []
      : [text],
  );

const needed = (kind: (typeof pictureKinds)[number]) =>
  Object.fromEntries(neededMeasures(kind).map((measure) => [measure, usual[kind][measure]!]));

/** Ten times as long or as short: as far as any family goes. */
const stretched = (sample: Readonly<Record<string, string>>, times: number) =>
  Object.fromEntries(
    Object.entries(sample).map(([measure, text], place) => [
      measure,
      place % 2 === 0 ? text.replace(/^\d+/, (digits) => String(Number(digits) * times)) : text,
    ]),
  );

describe.each(pictureKinds)('laws of %s', (kind) => {
  test('the samples show every measure that there is', () => {
    expect(Object.keys(usual[kind]).toSorted()).toEqual([...measuresOf(kind).keys()].toSorted());
  });

  test('every measure is written in it', () => {
    const texts = textsOf(draw(drawnOf(kind, usual[kind]))).join('\n');
    for (const text of written(kind)) expect(texts).toContain(text);
  });

  test('what it must have is enough to draw it', () => {
    const texts = textsOf(draw(drawnOf(kind, needed(kind)))).join('\n');
    for (const text of Object.values(needed(kind))) expect(texts).toContain(text);
  });

  test.each([1, 10])('nothing lies off the paper, at %i times the usual', (times) => {
    const sketch = draw(drawnOf(kind, stretched(usual[kind], times)));
    for (const mark of sketch.marks) {
      const { left, right, top, bottom } = extentOf(mark);
      expect(left).toBeGreaterThanOrEqual(-2);
      expect(right).toBeLessThanOrEqual(sketch.width + 2);
      expect(top).toBeGreaterThanOrEqual(0);
      expect(bottom).toBeLessThanOrEqual(sketch.height);
    }
  });

  test('no text lies on another', () => {
    const { marks } = draw(drawnOf(kind, usual[kind]));
    const boxes = marks.flatMap((mark) => (mark.kind === 'lettering' ? [extentOf(mark)] : []));
    const meeting = boxes.flatMap((a, place) =>
      boxes
        .slice(place + 1)
        .filter(
          (b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom,
        ),
    );
    expect(meeting).toEqual([]);
  });

  test('nothing asked for can be counted in it', () => {
    const shapes = (times: number) =>
      draw(drawnOf(kind, stretched(usual[kind], times))).marks.filter(
        (mark) => mark.kind !== 'lettering',
      ).length;
    expect(shapes(3)).toBe(shapes(1));
  });
});
