/**
 * A finished attempt and the nearest correct order, to be gone through together. The rows of `sideBySide`
 * are the beats: where a card stands, both sides put it up at once. O(cards).
 */
import type { Row } from './side-by-side.ts';

/** After a beat: how many cards are up on either side. */
export type Frame = {
  /** The beat that led here; none at the start. */
  readonly row: Row | undefined;
  readonly played: number;
  readonly right: number;
};

/** One more than there are rows: the first has nothing up on either side. */
export function framesOf(rows: readonly Row[]): readonly Frame[] {
  const frames: Frame[] = [{ row: undefined, played: 0, right: 0 }];
  for (const row of rows) {
    const { played, right } = frames.at(-1)!;
    frames.push({
      row,
      played: played + Number(row.played !== undefined),
      right: right + Number(row.right !== undefined),
    });
  }
  return frames;
}

/** Whether the two sides part there. */
export const isApart = ({ row }: Frame): boolean =>
  row !== undefined && (row.played?.fate ?? 'none') !== (row.right?.fate ?? 'none');
