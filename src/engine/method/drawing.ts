/** What a method's picture can show. Content names these; `picture` gives them shape. */

export const assemblies = ['wall-base', 'shelf-angle', 'window-sill'] as const;
export type Assembly = (typeof assemblies)[number];

/**
 * Things that a step leaves on the wall, roughly from the backup outward. `bare-tape` is tape whose
 * release paper was pulled; `pressed` is a lap pressed by hand until no fishmouth stands in it.
 */
export const layers = [
  'clean-face',
  'strap',
  'snap-line',
  'slope',
  'back-dam',
  'drip-edge',
  'primer',
  'tape',
  'bare-tape',
  'corner-piece',
  'membrane',
  'pressed',
  'rolled',
  'bar',
  'fasteners',
  'lap-sealant',
  'mastic',
  'end-dam',
  'weather-barrier',
  'weeps',
  'protection',
] as const;
export type Layer = (typeof layers)[number];

/**
 * Where on the assembly: `wall` is the turn-up's face, `shelf` the ledge that carries the veneer. At a
 * corner `second-side` is all of the other side, and without its ledge where `second-shelf` is named.
 */
export const zones = [
  'wall',
  'top-edge',
  'transition',
  'shelf',
  'toe',
  'corner',
  'second-side',
  'second-shelf',
  'seam',
  'ends',
  'jambs',
  'front-edge',
  'sheet-back',
  'everywhere',
] as const;
export type Zone = (typeof zones)[number];

/**
 * Measures that a setting can give a layer, each a length drawn to scale; `release` is an angle,
 * `slope` may be one or a ratio. `setback` lies inside an edge, `projection` beyond it.
 */
export const layerMeasures = [
  'height',
  'width',
  'spacing',
  'lap',
  'setback',
  'projection',
  'thickness',
  'slope',
  'release',
] as const;
export type LayerMeasure = (typeof layerMeasures)[number];

export type Drawn = {
  readonly layer: Layer;
  readonly zone: Zone;
  /** Which setting of the step gives which measure of the layer. */
  readonly takes: ReadonlyMap<LayerMeasure, string>;
};
