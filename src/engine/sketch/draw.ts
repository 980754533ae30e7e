/**
 * Draws a problem from its measures: in proportion as far as that can be seen, with the measures on
 * dimension lines. It is no scale drawing: what is asked for can never be counted or measured in it.
 */
import type { Drawn, PictureKind } from '#engine/takeoff/picture.ts';
import type { Text } from '#engine/text.ts';
import { barElevation, barRunElevation } from './bar.ts';
import { filletBead, roundBead, squareBead } from './beads.ts';
import { endDamElevation, strapElevation, twoFaces, weepElevation } from './faces.ts';
import { girthSection } from './girth.ts';
import { measured, width, type Measured } from './measured.ts';
import { buildingPlan, cornerPlan } from './plans.ts';
import { rollPlan, tapedSheetElevation } from './rolls.ts';
import { thermometer, timeLine } from './scales.ts';
import { dripEdgePlan, rollRunPlan, wallRunPlan } from './sheets.ts';
import { lineHeight, widthOf, type Mark, type Sketch } from './sketch.ts';
import { steppedElevation } from './stepped.ts';

type Kind = { readonly title: Text; readonly draw: (of: Measured) => readonly Mark[] };

const kinds: Readonly<Record<PictureKind, Kind>> = {
  'bar-elevation': {
    title: { en: 'One bar, from the front', es: 'Una barra, vista de frente' },
    draw: barElevation,
  },
  'bar-run-elevation': {
    title: { en: 'A run of bar, from the front', es: 'Un tramo de barra, visto de frente' },
    draw: barRunElevation,
  },
  'wall-run-plan': {
    title: { en: 'A straight wall, from above', es: 'Un muro recto, visto desde arriba' },
    draw: wallRunPlan,
  },
  'roll-run-plan': {
    title: { en: 'Rolls, one after the other', es: 'Rollos, uno tras otro' },
    draw: rollRunPlan,
  },
  'corner-plan': {
    title: { en: 'A corner, from above', es: 'Una esquina, vista desde arriba' },
    draw: cornerPlan,
  },
  'building-plan': {
    title: { en: 'A building, from above', es: 'Un edificio, visto desde arriba' },
    draw: buildingPlan,
  },
  'girth-section': {
    title: { en: 'The sheet, cut across', es: 'La membrana, en corte' },
    draw: girthSection,
  },
  'roll-plan': {
    title: { en: 'A roll, laid open', es: 'Un rollo, extendido' },
    draw: rollPlan,
  },
  'taped-sheet-elevation': {
    title: { en: 'The taped sheet, from the front', es: 'La membrana con cinta, de frente' },
    draw: tapedSheetElevation,
  },
  'square-bead-section': {
    title: { en: 'A bead, cut across', es: 'Un cordón, en corte' },
    draw: squareBead,
  },
  'round-bead-section': {
    title: { en: 'A round bead, cut across', es: 'Un cordón redondo, en corte' },
    draw: roundBead,
  },
  'fillet-bead-section': {
    title: { en: 'A bead in a corner, cut across', es: 'Un cordón en un rincón, en corte' },
    draw: filletBead,
  },
  'two-faces': {
    title: { en: 'The wall and the back of the sheet', es: 'El muro y el reverso de la membrana' },
    draw: twoFaces,
  },
  'strap-elevation': {
    title: { en: 'Strap across studs, from the front', es: 'Fleje sobre montantes, de frente' },
    draw: strapElevation,
  },
  'weep-elevation': {
    title: { en: 'Weeps, from the front', es: 'Lloraderos, de frente' },
    draw: weepElevation,
  },
  'end-dam-elevation': {
    title: { en: 'Over an opening, from the front', es: 'Sobre un vano, de frente' },
    draw: endDamElevation,
  },
  'drip-edge-plan': {
    title: { en: 'Drip edge, from above', es: 'Goterón, visto desde arriba' },
    draw: dripEdgePlan,
  },
  'stepped-elevation': {
    title: { en: 'A stepped base, from the front', es: 'Una base escalonada, de frente' },
    draw: steppedElevation,
  },
  thermometer: {
    title: { en: 'A thermometer', es: 'Un termómetro' },
    draw: thermometer,
  },
  'time-line': {
    title: { en: 'Stretches of time', es: 'Tramos de tiempo' },
    draw: timeLine,
  },
};

const margin = 10;

/** As high as its marks need. */
export function draw(drawn: Drawn): Sketch {
  const { title, draw: marksOf } = kinds[drawn.kind];
  const marks = marksOf(measured(drawn));
  const extents = marks.map(extentOf);
  const [top, bottom] = [
    Math.min(...extents.map((each) => each.top)) - margin,
    Math.max(...extents.map((each) => each.bottom)) + margin,
  ];
  return { width, height: bottom - top, marks: marks.map((mark) => lowered(mark, -top)), title };
}

export type Extent = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
};

export function extentOf(mark: Mark): Extent {
  switch (mark.kind) {
    case 'path': {
      const [xs, ys] = [mark.points.map(([x]) => x), mark.points.map(([, y]) => y)];
      return {
        left: Math.min(...xs),
        right: Math.max(...xs),
        top: Math.min(...ys),
        bottom: Math.max(...ys),
      };
    }
    case 'circle':
      return around(mark.centre, mark.radius, mark.radius);
    case 'lettering': {
      const [wide, high] = [widthOf(mark.text), lineHeight];
      const left = { start: 0, middle: -wide / 2, end: -wide }[mark.anchor];
      const [x, y] = mark.at;
      return mark.turn === 0
        ? { left: x + left, right: x + left + wide, top: y - high / 2, bottom: y + high / 2 }
        : around(mark.at, high / 2, wide / 2);
    }
  }
}

const around = ([x, y]: readonly [number, number], wide: number, high: number): Extent => ({
  left: x - wide,
  right: x + wide,
  top: y - high,
  bottom: y + high,
});

function lowered(mark: Mark, by: number): Mark {
  const down = ([x, y]: readonly [number, number]) => [x, y + by] as const;
  switch (mark.kind) {
    case 'path':
      return { ...mark, points: mark.points.map(down) };
    case 'circle':
      return { ...mark, centre: down(mark.centre) };
    case 'lettering':
      return { ...mark, at: down(mark.at) };
  }
}
