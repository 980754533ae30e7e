import type { Layer, LayerMeasure, Zone } from '#engine/method/drawing.ts';
import type { SettingId } from '#engine/method/method.ts';
import type { Severity } from '#engine/severity.ts';
import type { Text } from '#engine/text.ts';
import type { Paint } from './paint.ts';
import type { Bounds, Point } from './point.ts';

/** A wall drawn in inches, to be set on paper at any size, in any colours and either language. */
export type Drawing = {
  readonly title: Text;
  /** For the title block: what was asked of the site, and the answer. */
  readonly facts: readonly { readonly name: Text; readonly value: Text }[];
  readonly views: readonly View[];
  /** Everything that can be pointed at: what was there, then what was done, in that order. */
  readonly parts: readonly Part[];
};

export const viewIds = ['section', 'run', 'seam', 'sheet'] as const;
export type ViewId = (typeof viewIds)[number];

export type View = {
  readonly id: ViewId;
  readonly title: Text;
  /** In one sentence, for who cannot see it. */
  readonly says: Text;
  /** Does not change while the wall is built. */
  readonly bounds: Bounds;
  /** From back to front. */
  readonly shapes: readonly Shape[];
  readonly keynotes: readonly Keynote[];
  readonly dimensions: readonly Dimension[];
  /** Where each zone runs: along it goes the water. */
  readonly paths: ReadonlyMap<Zone, readonly Point[]>;
};

export type Part = {
  readonly id: string;
  /** A letter for what was there, a number for what was done. */
  readonly mark: string;
  readonly name: Text;
  /** What to know besides: the state, the settings, the step. */
  readonly notes: readonly Text[];
  readonly layer: Layer | undefined;
  readonly zones: readonly Zone[];
  /** The card that did it: a step's id or a decoy's. */
  readonly card: string | undefined;
  readonly fault: Severity | undefined;
};

export type Shape = {
  readonly id: string;
  readonly part: string;
  readonly zone: Zone | undefined;
  readonly points: readonly Point[];
  readonly closed: boolean;
  readonly paint: Paint;
};

/** The mark of a part, led to the point it names; in something large it stands on it. */
export type Keynote = {
  readonly part: string;
  readonly at: Point;
  readonly standsOn?: boolean;
};

export type Dimension = {
  readonly id: string;
  readonly part: string;
  readonly setting: SettingId;
  readonly measure: LayerMeasure;
  /** What is measured: the drawn length is the value. An angle is measured at `from`. */
  readonly from: Point;
  readonly to: Point;
  /** Which way the dimension line stands off, of length 1; none: the text is led to `from`. */
  readonly away: Point | undefined;
  readonly text: Text;
};
