import type { Kind } from '#engine/takeoff/formula.ts';
import { unitOfStyle, type Style } from '#engine/takeoff/style.ts';
import type { Text } from '#engine/text.ts';

/** An answer that is being written, as its field sees it. */
export type Writing = {
  readonly kind: Kind;
  readonly units: readonly Style[];
  readonly echo: Text | undefined;
  text: string;
  picked: Style | undefined;
  unread: Text | undefined;
};

/** Inches on a tape and plain inches are read alike. */
export const ofDifferentUnits = (styles: readonly Style[]): readonly Style[] =>
  styles.filter(
    (style, place) =>
      styles.findIndex((other) => unitOfStyle(other) === unitOfStyle(style)) === place,
  );
