import type { Assembly } from '#engine/method/drawing.ts';
import type { Site } from '#engine/method/site.ts';
import type { Paint } from './paint.ts';
import type { Point } from './point.ts';
import type { Surface } from './surface.ts';
import type { Built } from './words.ts';

/** What the work starts from, in section: x out from the backup's face, y up from the shelf. */
export type Scene = {
  readonly assembly: Assembly;
  /** Back to front; the work is drawn over them. */
  readonly built: readonly Solid[];
  /** Drawn over the work: what will hide it, and what is in front of it. */
  readonly later: readonly Solid[];
  readonly face: Surface;
  /** What stands proud of the face where the section is cut. */
  readonly proud: readonly Surface[];
  /** From the transition out to the face of the veneer. */
  readonly reach: number;
  /** Up to the break line. */
  readonly top: number;
  readonly bottom: number;
  /** How thick the wall is behind its face. */
  readonly depth: number;
};

export type Solid = {
  readonly what: Built;
  readonly points: readonly Point[];
  readonly closed: boolean;
  readonly paint: Paint;
  /** Where its letter stands; none: it shares that of another. */
  readonly mark: Point | undefined;
  /** Too thin for its letter to stand on: it is led to the mark. */
  readonly isThin?: boolean;
};

/** What stands behind the cavity: the site value of that name, else the first. */
export const backings = ['steel-stud', 'concrete-masonry', 'concrete', 'wood-stud'] as const;
export type Backing = (typeof backings)[number];

export const corners = ['inside', 'outside'] as const;
export type Corner = (typeof corners)[number];

const answers = (site: Site, known: string): boolean =>
  Object.values(site).some((value) => value === known || value === `${known}-corner`);

export const backingOf = (site: Site): Backing =>
  backings.find((backing) => answers(site, backing)) ?? backings[0];

export const cornerOf = (site: Site): Corner | undefined =>
  corners.find((corner) => answers(site, corner));
