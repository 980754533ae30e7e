import type { Keynote, Shape } from './drawing.ts';
import type { Solid } from './scene.ts';

export const builtShapes = (solids: readonly Solid[]): readonly Shape[] =>
  solids.map(({ what, points, closed, paint }, index) => ({
    id: `built.${what}.${index}`,
    part: what,
    zone: undefined,
    points,
    closed,
    paint,
  }));

export const builtKeynotes = (solids: readonly Solid[]): readonly Keynote[] =>
  solids.flatMap(({ what, mark, isThin = false }) =>
    mark ? [{ part: what, at: mark, standsOn: !isThin }] : [],
  );
