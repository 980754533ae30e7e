import type { Keynote, Shape, View } from './drawing.ts';
import { shapeOf } from './laid.ts';
import { paint } from './paint.ts';
import { type Point, rectangle } from './point.ts';
import { toeOf } from './range.ts';
import { viewTitles } from './words.ts';
import type { Wall } from './wall.ts';

const length = 30;

/** The sheet face down on a clean board, as cut; none where nothing is done to its back. */
export function sheetView(wall: Wall): View | undefined {
  const worked = wall.sequence.steps.some(({ draws }) =>
    draws.some(({ zone }) => zone === 'sheet-back'),
  );
  if (!worked) return undefined;
  const deep = wall.height + toeOf(wall);
  const back = wall.applied.filter(({ zone }) => zone === 'sheet-back');
  const coats = back.map((one) =>
    shapeOf(
      one,
      'coat',
      rectangle(0, 0, length, deep),
      one.layer === 'primer' && one.placed?.state === 'wet'
        ? paint('thin', 'primer-wet')
        : paint('thin', 'primer-dry'),
    ),
  );
  return {
    id: 'sheet',
    title: viewTitles.sheet,
    says: viewTitles.sheet,
    bounds: { left: -0.6, right: length + 0.6, bottom: -0.6, top: Math.max(deep, 12) + 0.6 },
    shapes: [...sheet(deep), ...coats],
    keynotes: [
      { part: 'sheet', at: [3, deep * 0.7], standsOn: true },
      ...back.map((one, i): Keynote => ({
        part: one.part,
        at: [length * 0.5, deep * (0.5 + i * 0.1)],
      })),
    ],
    dimensions: [],
    paths: new Map([
      [
        'sheet-back',
        [
          [0, deep / 2],
          [length, deep / 2],
        ] as readonly Point[],
      ],
    ]),
  };
}

/** Its outline with a corner turned over, to tell back from face. */
function sheet(deep: number): readonly Shape[] {
  const fold = 2;
  const built = (id: string, points: readonly Point[], fill: 'paper' | 'tone'): Shape => ({
    id: `built.sheet.${id}`,
    part: 'sheet',
    zone: undefined,
    points,
    closed: true,
    paint: paint('medium', fill),
  });
  return [
    built(
      'back',
      [
        [0, 0],
        [length, 0],
        [length, deep - fold],
        [length - fold, deep],
        [0, deep],
      ],
      'paper',
    ),
    built(
      'fold',
      [
        [length, deep - fold],
        [length - fold, deep],
        [length - fold, deep - fold],
      ],
      'tone',
    ),
  ];
}
