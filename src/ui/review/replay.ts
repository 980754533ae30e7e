import type { Marked } from '#engine/marking/kept-review.ts';
import { type Frame, framesOf } from '#engine/marking/replay.ts';
import { type Row, sideBySide } from '#engine/marking/side-by-side.ts';
import type { Drawing } from '#engine/picture/drawing.ts';
import { drawWall } from '#engine/picture/draw-wall.ts';
import type { Placed } from '#engine/picture/work.ts';
import { drawnFrom, siteOf } from './finished-wall.ts';

export type Replay = {
  readonly frames: readonly Frame[];
  /** The wall as it was built, after so many cards. */
  readonly yours: (cards: number) => Drawing;
  /** The wall built right, after so many steps. */
  readonly right: (steps: number) => Drawing;
};

export function replayOf(marked: Marked): Replay | undefined {
  const { attempt, review } = marked;
  const site = siteOf(attempt);
  if (!site) return undefined;
  const rows: readonly Row[] = sideBySide(attempt, review);
  const order = rightWork(marked);
  return {
    frames: framesOf(rows),
    yours: remembered((cards) => {
      const isDone = cards === attempt.played.length;
      // What was left out shows only when nothing more comes.
      const items = review.items.filter(({ at }) => (at === undefined ? isDone : at < cards));
      return drawnFrom(site, { ...attempt, played: attempt.played.slice(0, cards) }, items);
    }),
    right: remembered((steps) =>
      drawWall(site.whole, {
        placed: [
          ...site.before.map(({ id }) => placedDry(id, none)),
          ...order
            .slice(0, steps)
            .map((one, place) => (place === steps - 1 ? one.fresh : one.later)),
        ],
        faults: [],
        ghost: false,
      }),
    ),
  };
}

const none: Placed['settings'] = new Map();

const placedDry = (card: string, settings: Placed['settings']): Placed => ({
  card,
  settings,
  state: 'dry',
});

/** With the settings that were chosen, but for those out of tolerance: they are drawn as asked. */
function rightWork({ attempt, review }: Marked) {
  return review.nearestOrder.map((step) => {
    const chosen = attempt.played.find(({ card }) => card === step)?.settings ?? none;
    const wrong = new Set(
      review.items.flatMap((item) =>
        item.kind === 'out-of-tolerance' && item.card === step ? [item.setting] : [],
      ),
    );
    const settings = new Map([...chosen].filter(([setting]) => !wrong.has(setting)));
    const later = placedDry(step, settings);
    const dries = attempt.sequence.steps.find(({ id }) => id === step)?.dries;
    return { later, fresh: dries ? { ...later, state: 'wet' as const } : later };
  });
}

function remembered(draw: (count: number) => Drawing): (count: number) => Drawing {
  const known = new Map<number, Drawing>();
  return (count) => {
    const drawing = known.get(count) ?? draw(count);
    known.set(count, drawing);
    return drawing;
  };
}
