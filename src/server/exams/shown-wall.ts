/**
 * A wall that is built in an examination, as its candidate gets to see it: the site, the cards, the picture
 * of what is up and how it feels. Order, reasons, tolerances and waits stay here.
 */
import type { Content, Hazard } from '#engine/compile/content.ts';
import type { AskedCard, AskedWall } from '#engine/inspection/asked-wall.ts';
import { workOf } from '#engine/inspection/work-of.ts';
import { attemptFrom } from '#engine/marking/attempt-from.ts';
import { type Move, playedIn, wallAnswerFrom, waitedIn } from '#engine/marking/moves.ts';
import { touchAll } from '#engine/marking/touch-all.ts';
import { benchOf, startingValue } from '#engine/method/bench.ts';
import { waitsFor } from '#engine/method/waits.ts';
import { drawWall } from '#engine/picture/draw-wall.ts';
import { randomFrom } from '#engine/random.ts';
import { shelfOf } from '../attempts/shelf.ts';
import { attemptFileFor, type DrawnWall, wallFor } from './mock-up-part.ts';
import type { KeptPlan } from './plan.ts';
import { factsOf } from './wall-name.ts';

export type ShownWall = AskedWall & { readonly hazards: readonly Hazard[] };

export function shownWall(
  content: Content,
  plan: KeptPlan,
  item: string,
  given: string | undefined,
): ShownWall | undefined {
  const found = wallFor(content, plan, item);
  if (found.kind !== 'same') return undefined;
  const { wall } = found;
  const { method } = wall.sequence;
  const cards = cardsOf(wall, `${plan.seed}/${item}`);
  const named = new Set(cards.flatMap(({ hazards }) => hazards));
  return {
    title: method.title,
    facts: factsOf(method, wall.site),
    cards,
    hazards: [...named].flatMap((id) => content.hazards.get(id) ?? []),
    waits: waitsFor(wall.sequence),
    ...standing(content, wall, movesIn(given)),
  };
}

function cardsOf({ sequence }: DrawnWall, seed: string): readonly AskedCard[] {
  return benchOf(sequence, randomFrom(`${seed}/bench`)).map(({ id, say, hazards, asks }) => ({
    id,
    say,
    hazards,
    asks: asks.map((ask) => {
      const { dimension, entry } = ask.sheetNumber;
      const start = startingValue(ask, randomFrom(`${seed}/${id}/${ask.id}`));
      return { id: ask.id, ask: ask.ask, sheetNumber: { dimension, entry }, start };
    }),
  }));
}

/** None where nothing was saved yet, or what was saved reads as nothing. */
export function movesIn(value: string | undefined): readonly Move[] {
  if (value === undefined) return [];
  try {
    const read = wallAnswerFrom(JSON.parse(value));
    return read.ok ? read.value.moves : [];
  } catch {
    return [];
  }
}

function standing(
  content: Content,
  wall: DrawnWall,
  moves: readonly Move[],
): Pick<AskedWall, 'drawing' | 'felt' | 'standsFor'> {
  const read = attemptFrom(attemptFileFor(wall, moves), shelfOf(content));
  const attempt = read.ok ? read.value : { sequence: wall.sequence, played: [] };
  const minute = waitedIn(moves);
  return {
    drawing: drawWall(wall.sequence, workOf(attempt, [], minute)),
    felt: touchAll(attempt, minute)
      .map(({ step, feel }) => ({ card: step.id, feel }))
      .toReversed(),
    standsFor: { cards: playedIn(moves).length, minute },
  };
}
