/** Walls from above: a corner, a building. */
import { dimension } from './dimension.ts';
import { box, label, line, shape } from './marks.ts';
import { counted, named, within, width, type Measured } from './measured.ts';
import type { Mark, Point } from './sketch.ts';

const thick = 26;
const sheetName = { en: 'sheet', es: 'membrana' };

export function cornerPlan(of: Measured): readonly Mark[] {
  const [x, y] = [92, 206];
  const up = within((214 * of.size('left')) / of.size('right'), 96, 172);
  const across = within((up * of.size('right')) / of.size('left'), 120, 214);
  const leg = 44;
  const lap = of.has('lap') ? 16 : 0;
  const wall: readonly Point[] = [
    [x - thick, y - up],
    [x, y - up],
    [x, y],
    [x + across, y],
    [x + across, y + thick],
    [x - thick, y + thick],
  ];
  return [
    shape(wall, 'masonry', 'plain'),
    line(
      [
        [x + 5, y - leg],
        [x + 5, y - 5],
        [x + leg, y - 5],
      ],
      'heavy',
    ),
    line(
      [
        [x + 11, y - up],
        [x + 11, y - leg + lap],
      ],
      'heavy',
    ),
    line(
      [
        [x + leg - lap, y - 11],
        [x + across, y - 11],
      ],
      'heavy',
    ),
    ...dimension(
      [
        [x - thick, y - up],
        [x - thick, y],
      ],
      'left',
      x - thick - 28,
      of.text('left'),
    ),
    ...dimension(
      [
        [x, y + thick],
        [x + across, y + thick],
      ],
      'below',
      y + thick + 26,
      of.text('right'),
    ),
    ...cornerPiece(of, [x, y], leg, lap),
  ];
}

function cornerPiece(of: Measured, [x, y]: Point, leg: number, lap: number): readonly Mark[] {
  return [
    ...(of.has('leg')
      ? dimension(
          [
            [x, y - 12],
            [x + leg, y - 12],
          ],
          'above',
          y - 62,
          of.text('leg'),
        )
      : []),
    ...(of.has('lap')
      ? dimension(
          [
            [x + leg - lap, y - 14],
            [x + leg, y - 14],
          ],
          'above',
          y - 34,
          named({ en: 'lap', es: 'traslape' }, of.text('lap')),
        )
      : []),
    ...(of.has('sheet')
      ? [label([width - 12, y - 62], named(sheetName, of.text('sheet')), 'end')]
      : []),
  ];
}

const bayNames = { en: 'bays', es: 'cuerpos' };
const every = { en: 'every', es: 'cada' };
const levelNames = { en: 'levels', es: 'niveles' };

export function buildingPlan(of: Measured): readonly Mark[] {
  const [left, top] = [68, 40];
  const down = within((236 * of.size('width')) / of.size('length'), 84, 168);
  // Projections take the room that is drawn for them.
  const least = of.has('projections') ? 236 : 120;
  const across = within((down * of.size('length')) / of.size('width'), least, 236);
  const [right, bottom] = [left + across, top + down];
  const out = of.has('projections') ? 16 : 0;
  // Three stand for all, however many there are.
  const bumps = out > 0 ? [34, 102, 170].map((x) => left + x) : [];
  return [
    box([left, top], [right, bottom], 'masonry', 'plain'),
    box([left + 14, top + 14], [right - 14, bottom - 14], 'paper', 'plain'),
    ...bumps.map((x) => box([x, bottom], [x + 26, bottom + out], 'masonry', 'plain')),
    ...levels(of, [left + across / 2, top + down / 2]),
    ...(of.has('spacing') && bumps.length > 0
      ? dimension(
          [
            [bumps[0]!, bottom + out],
            [bumps[1]!, bottom + out],
          ],
          'below',
          bottom + out + 24,
          of.text('spacing'),
        )
      : []),
    ...(of.has('depth') && bumps.length > 0
      ? dimension(
          [
            [bumps.at(-1)! + 26, bottom],
            [bumps.at(-1)! + 26, bottom + out],
          ],
          'right',
          bumps.at(-1)! + 44,
          of.text('depth'),
        )
      : []),
    ...dimension(
      [
        [left, top],
        [right, top],
      ],
      'above',
      top - 24,
      of.text('length'),
    ),
    ...dimension(
      [
        [left, top],
        [left, bottom],
      ],
      'left',
      left - 28,
      of.text('width'),
    ),
  ];
}

function levels(of: Measured, [x, y]: Point): readonly Mark[] {
  const notes = [
    ...(of.has('levels') ? [counted(of.text('levels'), levelNames)] : []),
    ...(of.has('projections') ? [counted(of.text('projections'), bayNames)] : []),
    // With nothing to measure it between, it is of what goes all the way round.
    ...(of.has('spacing') && !of.has('projections') ? [named(every, of.text('spacing'))] : []),
  ];
  return notes.map((note, place) => label([x, y + (place - (notes.length - 1) / 2) * 20], note));
}
