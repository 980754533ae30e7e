/** Marks the walls of a mock-up part from their steps, as every mock-up is marked; no help was to be had. */
import type { Content } from '#engine/compile/content.ts';
import type { Built } from '#engine/exam/mock-up-result.ts';
import { givenAnswers } from '#engine/exam/sitting.ts';
import type { AttemptFile } from '#engine/marking/attempt-file.ts';
import { attemptFrom } from '#engine/marking/attempt-from.ts';
import type { PunchLine } from '#engine/marking/punch-line.ts';
import { type Item, review } from '#engine/marking/review.ts';
import type { Method } from '#engine/method/method.ts';
import type { Text } from '#engine/text.ts';
import { shelfOf } from '../attempts/shelf.ts';
import { attemptFileFor, type DrawnWall, wallFor } from './mock-up-part.ts';
import { keptPlan } from './plan.ts';
import { movesIn } from './shown-wall.ts';
import type { Known } from './sitting-log.ts';
import { factsOf, type SiteFact } from './wall-name.ts';

/** One wall as it was marked, with all that was done on it. */
export type WallLine = Built & {
  readonly item: string;
  readonly topic: string | undefined;
  readonly ask: Text | undefined;
  readonly facts: readonly SiteFact[];
  /** Played as it is kept: nothing where it was not begun. */
  readonly attempt: AttemptFile | undefined;
  readonly punch: readonly PunchLine[];
  readonly leaks: number;
  readonly leftOut: 'retired' | 'gone' | 'changed' | undefined;
};

export const markMockUp = (content: Content, known: Known): readonly WallLine[] => {
  const plan = keptPlan(known.row);
  return givenAnswers(known.sitting).map(({ item, answer }): WallLine => {
    const found = wallFor(content, plan, item);
    if (found.kind !== 'same') return lostLine(item, found.kind);
    const leftOut = known.sitting.retired.has(item) ? 'retired' : undefined;
    return { item, ...marked(content, found.wall, answer?.value), leftOut };
  });
};

const lostLine = (item: string, leftOut: 'gone' | 'changed'): WallLine => ({
  item,
  topic: undefined,
  ask: undefined,
  facts: [],
  attempt: undefined,
  score: 0,
  outcome: 'rework',
  punch: [],
  leaks: 0,
  leftOut,
});

function marked(
  content: Content,
  wall: DrawnWall,
  value: string | undefined,
): Omit<WallLine, 'item' | 'leftOut'> {
  const { sequence, site } = wall;
  const { method } = sequence;
  const file = attemptFileFor(wall, movesIn(value));
  const read = attemptFrom(file, shelfOf(content));
  const { score, outcome, items, water } = review(read.ok ? read.value : { sequence, played: [] });
  return {
    topic: method.id,
    ask: method.title,
    facts: factsOf(method, site),
    attempt: value === undefined ? undefined : file,
    score,
    outcome,
    punch: items.map((item) => punchLine(method, item)),
    leaks: water.leaks.length,
  };
}

function punchLine(
  { steps, decoys }: Method,
  { kind, card, severity, points, because, rework }: Item,
): PunchLine {
  const known = [...steps, ...decoys].find(({ id }) => id === card);
  const named = known?.say ?? { en: card, es: card };
  return { kind, card: named, severity, points, because, rework: rework.say };
}
