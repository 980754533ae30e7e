/** What the drawings of shipped problems show: every measure, as the problem writes it, and none out of proportion. */
import { describe, expect, it } from 'vitest';
import { draw, extentOf } from '#engine/sketch/draw.ts';
import type { Mark, Sketch } from '#engine/sketch/sketch.ts';
import { instanceOf } from '#engine/takeoff/instance.ts';
import type { Drawn } from '#engine/takeoff/picture.ts';
import { problemOf } from '#engine/takeoff/problem.ts';
import { approximate } from '#engine/measure/rational.ts';
import { languages } from '#engine/text.ts';
import { content, takeoff } from '../engine/takeoff/shipped.ts';

function problemsOf(id: string) {
  const fitted = takeoff(id);
  return Array.from({ length: 40 }, (_, seed) => {
    const made = instanceOf(fitted, seed);
    if (!made.ok) throw new Error(`${id}, seed ${seed}: ${made.error.code}`);
    return problemOf(made.value);
  });
}

/** A sheet ends past the edge or short of it, and says the one; how long to wait is for the learner to find. */
function isKeptBack({ measures }: Drawn, measure: string): boolean {
  const drip = measures.get('drip');
  return (
    measure === 'drip' ||
    measure === 'wait' ||
    (measure === 'projection' && drip === false) ||
    (measure === 'setback' && drip === true)
  );
}

const wordsIn = ({ marks }: Sketch, language: (typeof languages)[number]): readonly string[] =>
  marks.flatMap((mark) => (mark.kind === 'lettering' ? [mark.text[language]] : []));

const ids = [...content.takeoffs.keys()];

describe.each(ids)('the drawings of %s', (id) => {
  it('write every measure that they show', () => {
    const missing = problemsOf(id).flatMap(({ pictures }) =>
      pictures.flatMap((drawn) => {
        const sketch = draw(drawn);
        return languages.flatMap((language) =>
          [...drawn.written].flatMap(([measure, text]) =>
            isKeptBack(drawn, measure) ||
            wordsIn(sketch, language).some((words) => words.includes(text[language]))
              ? []
              : [`${drawn.kind}: ${measure} ${text[language]}`],
          ),
        );
      }),
    );
    expect(missing).toEqual([]);
  });

  it('lie on the paper, no text on another', () => {
    for (const { pictures } of problemsOf(id)) {
      for (const drawn of pictures) {
        const sketch = draw(drawn);
        const extents = sketch.marks.map(extentOf);
        expect(extents.filter(({ left, right }) => left < -2 || right > sketch.width + 2)).toEqual(
          [],
        );
        const letters = sketch.marks.filter(({ kind }) => kind === 'lettering');
        const meeting = letters.filter((mark, place) =>
          letters.slice(place + 1).some((other) => meets(mark, other)),
        );
        expect([drawn.kind, meeting]).toEqual([drawn.kind, []]);
      }
    }
  });
});

function meets(one: Mark, other: Mark): boolean {
  const [a, b] = [extentOf(one), extentOf(other)];
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** Two measures that are drawn in proportion, as far as both can be seen. */
const inProportion = {
  'square-bead-section': ['width', 'depth'],
  'building-plan': ['length', 'width'],
  'corner-plan': ['right', 'left'],
  'girth-section': ['turn-up', 'shelf'],
} as const;

/** How long the dimension line is that carries this text. */
function drawnLength({ marks }: Sketch, words: string): number {
  const lettering = marks.findIndex((mark) => mark.kind === 'lettering' && mark.text.en === words);
  // A dimension is drawn as extensions, line, ticks and text, in this order.
  const line = marks[lettering - 3];
  if (line?.kind !== 'path') throw new Error(`No dimension line carries ${words}.`);
  const [[x1, y1], [x2, y2]] = [line.points[0]!, line.points[1]!];
  return Math.hypot(x2 - x1, y2 - y1);
}

describe('dimension lines', () => {
  it.each(Object.entries(inProportion))(
    'of a %s: the longer is drawn longer, or to scale',
    (kind, [a, b]) => {
      const drawings = ids
        .flatMap((id) => problemsOf(id))
        .flatMap(({ pictures }) => pictures.filter((drawn) => drawn.kind === kind));
      expect(drawings.length).toBeGreaterThan(30);
      const ratios = drawings.map((drawn) => {
        const size = (measure: string): number => {
          const value = drawn.measures.get(measure);
          if (typeof value !== 'object') throw new Error(`No ${measure}.`);
          return approximate(value.value);
        };
        const long = (measure: string): number =>
          drawnLength(draw(drawn), drawn.written.get(measure)!.en);
        return { real: size(a) / size(b), paper: long(a) / long(b) };
      });
      for (const { real, paper } of ratios) {
        // Squeezed where one could not be seen; what is a quarter longer is never drawn shorter.
        if (real >= 1.25) expect([real, paper > 1]).toEqual([real, true]);
        if (real <= 0.8) expect([real, paper < 1]).toEqual([real, true]);
      }
      const exact = ratios.filter(({ real, paper }) => Math.abs(real / paper - 1) < 1e-9);
      expect(exact.length).toBeGreaterThan(ratios.length / 10);
    },
  );
});
