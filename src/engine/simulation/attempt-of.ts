/**
 * An attempt of a simulated learner on a wall, as it would have been sent: the same learner, wall and
 * seed always give the same. What goes wrong are steps left out, steps done before what they follow,
 * settings a little off, waits cut short, and cards that belong on no such wall. The clock moves only by
 * waiting, as in a mock-up. O(cards^2 x steps).
 */
import type { Standing } from '#engine/marking/attempt.ts';
import type { AttemptFile, PlayedFile } from '#engine/marking/attempt-file.ts';
import { dryingFrom } from '#engine/marking/touch-test.ts';
import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import { approximate, rational } from '#engine/measure/rational.ts';
import { precedes } from '#engine/method/partial-order.ts';
import type { Sequence, SequenceStep } from '#engine/method/sequence.ts';
import { pick, type Random, randomFrom, whole } from '#engine/random.ts';
import { chosenSetting } from './chosen-setting.ts';
import { errs, type Learner } from './learner.ts';
import { playedOrder } from './played-order.ts';

/** The shares of a wait, in hundredths, between which one who does not wait it out goes on. */
const [soonest, latest] = [20, 85];

export function attemptOf(
  sequence: Sequence,
  learner: Learner,
  seed: number | string,
): AttemptFile {
  const random = randomFrom(`${seed}/simulation/${sequence.method.id}`);
  const order = playedOrder(sequence, learner, random);
  const settings = order.map((step) => settingsOf(sequence, step, learner, random));
  const cards = playedBy(sequence, order, settings, learner, random);
  return {
    method: sequence.method.id,
    site: sequence.site,
    dataSheet: sequence.dataSheet.id,
    steps: withStray(sequence, cards, learner, random),
  };
}

type Settings = Readonly<Record<string, string>>;

function settingsOf(
  { method, steps }: Sequence,
  step: number,
  learner: Learner,
  random: Random,
): Settings {
  const { id, asks } = steps[step]!;
  return Object.fromEntries(
    asks.map((ask) => {
      const isOff = errs(random, learner, 'off', `${method.id}/${id}/${ask.id}`);
      return [ask.id, chosenSetting(ask, isOff, random)];
    }),
  );
}

/** The cards with their minutes: before each, whatever has to dry first is waited for, or not quite. */
function playedBy(
  sequence: Sequence,
  order: readonly number[],
  settings: readonly Settings[],
  learner: Learner,
  random: Random,
): readonly PlayedFile[] {
  const standing: Standing[] = [];
  const waitedFor = new Set<number>();
  let now = 0;
  const cards: PlayedFile[] = [];
  for (const [at, step] of order.entries()) {
    for (const card of standing) {
      const { dries, id } = sequence.steps[card.step]!;
      if (!dries || waitedFor.has(card.step) || !precedes(sequence.order, card.step, step))
        continue;
      waitedFor.add(card.step);
      const isRushed = errs(random, learner, 'rushed', `${sequence.method.id}/${id}`);
      const share = isRushed ? whole(random, soonest, latest) : 100;
      const from = dryingFrom(sequence, standing, card) ?? card.minute!;
      const ready = from.add(dries.least.value.div(60n).mul(rational(share, 100)));
      // Rushed, the minutes are rounded down, or a wait of one minute could not be cut short.
      now = Math.max(now, approximate(isRushed ? ready.floor() : ready.ceil()));
    }
    const { id, asks } = sequence.steps[step]!;
    const given = settings[at]!;
    cards.push({ step: id, minute: now, ...(asks.length > 0 ? { settings: given } : {}) });
    standing.push({ card: id, settings: readBack(asks, given), minute: rational(now), step, at });
  }
  return cards;
}

const readBack = (asks: SequenceStep['asks'], given: Settings): Standing['settings'] =>
  new Map(
    asks.flatMap(({ id, sheetNumber }) => {
      const read = parseQuantity(given[id]!, sheetNumber.dimension);
      return read.ok ? [[id, read.value] as const] : [];
    }),
  );

/** At most one card that belongs elsewhere, put in anywhere. */
function withStray(
  { method, strays }: Sequence,
  cards: readonly PlayedFile[],
  learner: Learner,
  random: Random,
): readonly PlayedFile[] {
  const decoys = strays.flatMap((stray) => (stray.kind === 'decoy' ? [stray.decoy.id] : []));
  if (decoys.length === 0 || cards.length === 0) return cards;
  const decoy = pick(random, decoys);
  if (!errs(random, learner, 'stray', `${method.id}/${decoy}`)) return cards;
  const at = whole(random, 0, cards.length - 1);
  return cards.toSpliced(at, 0, { step: decoy, minute: cards[at]!.minute ?? 0 });
}
