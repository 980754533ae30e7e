import { breachOf } from '#engine/marking/breach-of.ts';
import type { Deviation, DeviationKind } from '#engine/marking/deviation.ts';
import type { Item, Review } from '#engine/marking/review.ts';
import type { Zone } from '#engine/method/drawing.ts';
import type { DecoyId, SettingId, Step, StepId } from '#engine/method/method.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { openJoints } from '#engine/water/open-joints.ts';

/** What can be wrong with a wall that somebody looks over, in words of the punch list. */
export const faultKinds = [
  'left-out',
  'out-of-order',
  'not-on-this-wall',
  'rushed',
  'out-of-tolerance',
] as const satisfies readonly DeviationKind[];
export type FaultKind = (typeof faultKinds)[number];

/** An item of the review, with where it can be pointed at. */
export type Fault = {
  readonly item: Item;
  readonly kind: FaultKind;
  /** What names it: its card, and where an order was broken the other cards of that order. */
  readonly cards: readonly (StepId | DecoyId)[];
  /** Where its cards draw something, and the joints that it opens. Never `everywhere`. */
  readonly zones: readonly Zone[];
  /** Whether it shows in the drawing, or only where water gets in. */
  readonly shows: 'drawn' | 'leak';
};

/** What the items of a review look like on the wall; undefined for one that cannot be found by looking. */
export const faultsOf = (
  sequence: Sequence,
  { items, water }: Review,
): readonly (Fault | undefined)[] =>
  items.map((item, index) => {
    const kind = faultKinds.find((known) => known === item.kind);
    const cards = cardsOf(sequence, item);
    const opened = zonesOpened(sequence, item);
    // A card that belongs on no wall draws nothing of its own; it is marked where it spoils a joint.
    const drawn =
      kind === 'not-on-this-wall' ? opened : zonesDrawn(sequence, cards, settingOf(item));
    const leaks = water.leaks.some(({ breaches }) => breaches.includes(index));
    const zones = [...new Set([...drawn, ...opened])];
    if (!kind || zones.length === 0 || (drawn.length === 0 && !leaks)) return undefined;
    return { item, kind, cards, zones, shows: drawn.length > 0 ? 'drawn' : 'leak' };
  });

const settingOf = (item: Item): SettingId | undefined =>
  item.kind === 'out-of-tolerance' ? item.setting : undefined;

function cardsOf({ steps }: Sequence, item: Item): Fault['cards'] {
  if (item.kind !== 'out-of-order') return [item.card];
  const others = item.broken.flatMap(({ before, after }) => [steps[before]!.id, steps[after]!.id]);
  return [...new Set([item.card, ...others])];
}

/** Where a setting is drawn to scale, only there. */
function zonesDrawn(
  { steps }: Sequence,
  cards: Fault['cards'],
  setting: SettingId | undefined,
): readonly Zone[] {
  const draws = steps
    .filter(({ id }) => cards.includes(id))
    .flatMap((step: Step) => step.draws)
    .filter(({ zone }) => zone !== 'everywhere');
  const toScale = draws.filter(
    ({ takes }) => setting !== undefined && [...takes.values()].includes(setting),
  );
  return (toScale.length > 0 ? toScale : draws).map(({ zone }) => zone);
}

const zonesOpened = (sequence: Sequence, deviation: Deviation): readonly Zone[] =>
  openJoints(sequence.joints, [breachOf(sequence, deviation)])
    .filter(({ breaches }) => breaches.length > 0)
    .map(({ joint }) => joint.zone);

/** Everywhere that this wall has something to look at, in the order in which the work gets there. */
export const zonesOn = ({ steps, joints }: Sequence): readonly Zone[] => [
  ...new Set(
    [...steps.flatMap(({ draws }) => draws), ...joints]
      .map(({ zone }) => zone)
      .filter((zone) => zone !== 'everywhere'),
  ),
];
