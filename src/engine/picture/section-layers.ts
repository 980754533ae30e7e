import type { Layer } from '#engine/method/drawing.ts';
import {
  type Lay,
  acrossStrip,
  bead,
  coat,
  down,
  drawnThickness,
  left,
  measuredAt,
  noted,
  onFace,
  trace,
} from './coats.ts';
import { dimensionOf, nothing, shapeOf } from './laid.ts';
import { measureOf } from './measures.ts';
import { paint } from './paint.ts';
import { type Point, add } from './point.ts';
import { bar, fasteners, lapSealant } from './section-bar.ts';
import { layBackDam, layDripEdge, laySlope } from './section-built-up.ts';
import { barrier, endDam, protection, weeps } from './section-cover.ts';
import { laySheet } from './section-sheet.ts';
import { isOn } from './wall.ts';

const primer: Lay = onFace((wall, one, surface, range) =>
  coat(
    wall,
    one,
    surface,
    range,
    drawnThickness.primer,
    one.placed?.state === 'wet' ? paint('thin', 'primer-wet') : paint('hair', 'primer-dry'),
  ),
);

const snapLine: Lay = onFace((wall, one, surface, [v]) => {
  const at = measuredAt(surface, v);
  const floor: Point = [at[0], 0];
  return {
    ...nothing(surface),
    shapes: [
      shapeOf(
        one,
        'line',
        [add(at, [-wall.scene.depth * 0.25, 0]), add(at, [1.2, 0])],
        paint('medium', 'none', 'snapped'),
        false,
      ),
    ],
    dimensions: dimensionOf(one, 'height', floor, at, left),
    at: add(at, [0.9, 0]),
  };
});

const tape: Lay = onFace((wall, one, surface, range) => {
  const inked = paint('medium', 'tape');
  const laid = coat(wall, one, surface, range, drawnThickness.tape, inked);
  return { ...laid, dimensions: acrossStrip(one, surface, range) };
});

/** A plate at a splice of the shelf is not where the wall is cut. */
const strap: Lay = onFace((wall, one, surface, range) => {
  if (one.zone === 'shelf') return nothing(surface);
  const thick = measureOf(wall, one, 'thickness', drawnThickness.strap);
  const laid = coat(wall, one, surface, range, thick, paint('medium', 'metal'));
  return {
    ...laid,
    dimensions: [...acrossStrip(one, surface, range), ...noted(one, 'thickness', laid.at!)],
  };
});

const mastic: Lay = onFace((wall, one, surface, range) => {
  const pressed = isOn(wall, 'rolled', 'toe');
  const height = measureOf(wall, one, 'thickness', pressed ? 0.16 : 0.3);
  const laid = bead(one, surface, range, height, paint('medium', 'mastic'));
  const outer = measuredAt(surface, range[1]);
  return {
    ...laid,
    dimensions: [
      ...dimensionOf(one, 'setback', outer, [wall.scene.reach, outer[1]], down),
      ...acrossStrip(one, surface, range),
    ],
  };
});

export const sectionLayers: Readonly<Record<Layer, Lay>> = {
  'clean-face': trace(paint('hair', 'none', 'solid'), 0.06),
  strap,
  'snap-line': snapLine,
  slope: onFace(laySlope),
  'back-dam': layBackDam,
  'drip-edge': layDripEdge,
  primer,
  tape,
  'corner-piece': (_, __, surface) => nothing(surface),
  'bare-tape': (_, __, surface) => nothing(surface),
  pressed: trace(paint('thin', 'none', 'rolled'), 0.12),
  membrane: onFace(laySheet),
  rolled: trace(paint('medium', 'none', 'rolled'), 0.16),
  bar,
  fasteners,
  'lap-sealant': lapSealant,
  mastic,
  'end-dam': endDam,
  'weather-barrier': barrier,
  weeps,
  protection,
};
