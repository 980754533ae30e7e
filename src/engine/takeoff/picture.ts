import type { DimensionName } from '#engine/measure/dimension.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Text } from '#engine/text.ts';

/** Of what kind a measure of a picture is. */
type MeasureKind = Exclude<DimensionName, 'product' | 'ratio'> | 'truth';

type Measures = Readonly<Record<string, MeasureKind>>;

/**
 * What the picture of a problem can be, and what it shows to scale or writes beside a dimension line.
 * A measure of a kind `count` says how many of something are drawn. A picture that lacks one of
 * `needs` cannot be drawn.
 */
export const pictures = {
  /** One bar from the front, with its fasteners: first from each end, then spaced. */
  'bar-elevation': { needs: { length: 'length' }, may: { end: 'length', spacing: 'length' } },
  /** A wall's run of bar from the front: pieces with gaps between, the last one cut. */
  'bar-run-elevation': {
    needs: { run: 'length', piece: 'length' },
    may: { gap: 'length', end: 'length', spacing: 'length' },
  },
  /** A straight wall from above: sheets one after another, each lapped onto the one before; and how
   * many corners it turns.
   */
  'wall-run-plan': {
    needs: { run: 'length', sheet: 'length' },
    may: { lap: 'length', inside: 'count', outside: 'count' },
  },
  /** Membrane unrolled in one line, a roll after the other. */
  'roll-run-plan': { needs: { run: 'length', piece: 'length' }, may: {} },
  /** Two legs that meet in a corner, from above, with the corner piece in it. */
  'corner-plan': {
    needs: { left: 'length', right: 'length' },
    may: { leg: 'length', lap: 'length', sheet: 'length' },
  },
  /** A rectangular building from above, with projections along one side. */
  'building-plan': {
    needs: { length: 'length', width: 'length' },
    may: { projections: 'count', depth: 'length', spacing: 'length', levels: 'count' },
  },
  /** The sheet cut across, from its top edge on the backing to its outer edge. */
  'girth-section': {
    needs: { 'turn-up': 'length', shelf: 'length' },
    // `drip` says which of the two ends it has; without it, both are shown.
    may: { fold: 'length', setback: 'length', projection: 'length', drip: 'truth' },
  },
  /** A roll laid open, with the strips that are ripped from it. */
  'roll-plan': {
    needs: { width: 'length', strip: 'length' },
    may: { length: 'length' },
  },
  /** The top edge of the sheet with its seams and corners, from the front: where tape runs. */
  'taped-sheet-elevation': {
    needs: { run: 'length', girth: 'length' },
    may: { seams: 'count', corners: 'count', tape: 'length' },
  },
  /** A bead cut across: as wide and deep as it is laid. */
  'square-bead-section': { needs: { width: 'length', depth: 'length' }, may: { run: 'length' } },
  /** A round bead cut across. */
  'round-bead-section': { needs: { diameter: 'length' }, may: { run: 'length' } },
  /** A bead tooled into an inside angle, cut across: a triangle with two equal legs. */
  'fillet-bead-section': { needs: { leg: 'length' }, may: { run: 'length' } },
  /** The wall and the sheet opened beside it: the two faces that primer goes on. */
  'two-faces': { needs: { run: 'length', girth: 'length' }, may: {} },
  /** Studs from the front with strap across them. */
  'strap-elevation': {
    needs: { run: 'length', 'stud-spacing': 'length', piece: 'length' },
    may: {},
  },
  /** The first course of brick from the front, with its weeps. */
  'weep-elevation': { needs: { run: 'length', spacing: 'length' }, may: {} },
  /** An opening from the front: the sheet over it, turned up at both ends. */
  'end-dam-elevation': {
    needs: { opening: 'length', bearing: 'length', dam: 'length' },
    may: {},
  },
  /** Pieces of drip edge along a shelf, from above, each lapped onto the one before. */
  'drip-edge-plan': {
    needs: { run: 'length', piece: 'length' },
    may: { lap: 'length' },
  },
  /** The foot of a wall on a slope, from the front: the flashing steps down by whole courses. */
  'stepped-elevation': {
    needs: { run: 'length', fall: 'length', course: 'length' },
    may: { rise: 'length' },
  },
  /** A thermometer with marks at what was read and at what the data sheet asks. */
  thermometer: {
    needs: { surface: 'temperature' },
    may: {
      air: 'temperature',
      'dew-point': 'temperature',
      least: 'temperature',
      most: 'temperature',
    },
  },
  /** Stretches of time one after another, and a wait of unknown length after the first. */
  'time-line': {
    needs: { first: 'time' },
    may: { second: 'time', third: 'time', fourth: 'time', wait: 'time' },
  },
} as const satisfies Readonly<Record<string, { readonly needs: Measures; readonly may: Measures }>>;

export type PictureKind = keyof typeof pictures;

export const pictureKinds = Object.keys(pictures) as readonly PictureKind[];

/** All measures of a picture, each with its kind. */
export const measuresOf = (kind: PictureKind): ReadonlyMap<string, MeasureKind> => {
  const { needs, may }: { readonly needs: Measures; readonly may: Measures } = pictures[kind];
  return new Map(Object.entries({ ...needs, ...may }));
};

export const neededMeasures = (kind: PictureKind): readonly string[] =>
  Object.keys(pictures[kind].needs);

/** A picture with its measures filled in: everything that drawing it takes. */
export type Drawn = {
  readonly kind: PictureKind;
  readonly measures: ReadonlyMap<string, Quantity | boolean>;
  /** Each measure as the problem writes it. */
  readonly written: ReadonlyMap<string, Text>;
};
