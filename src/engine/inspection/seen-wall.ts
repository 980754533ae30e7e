import type { Attempt } from '#engine/marking/attempt.ts';
import type { Drawing } from '#engine/picture/drawing.ts';
import { type Clues, cluesOn } from './clues.ts';
import { drawnADayLater } from './drawn-a-day-later.ts';
import { type LogLine, siteLog } from './site-log.ts';

/** A wall as somebody sees who comes to look it over: its picture and the log, and nothing behind them. */
export type SeenWall = {
  readonly drawing: Drawing;
  readonly log: readonly LogLine[];
  readonly clues: Clues;
};

export function seenWall(attempt: Attempt): SeenWall {
  const drawing = drawnADayLater(attempt);
  return { drawing, log: siteLog(attempt, drawing), clues: cluesOn(attempt.sequence) };
}
