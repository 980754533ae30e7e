import type { Quantity } from '#engine/measure/quantity.ts';
import { approximate, rational } from '#engine/measure/rational.ts';
import type { DecoyId, SettingId } from '#engine/method/method.ts';
import { choicesOf } from '#engine/method/offered.ts';
import { covers } from '#engine/method/partial-order.ts';
import { judge } from '#engine/method/rule.ts';
import type { Ask, Sequence } from '#engine/method/sequence.ts';
import { pick, type Random } from '#engine/random.ts';
import { type FaultKind, faultKinds } from './fault.ts';

/** One thing to do wrong while building; steps by place in the sequence. */
export type Flaw =
  | { readonly kind: 'left-out'; readonly step: number }
  /** `after` comes just before `before`, or `before` just after `after`: whichever is moved. */
  | {
      readonly kind: 'out-of-order';
      readonly before: number;
      readonly after: number;
      readonly moved: 'before' | 'after';
    }
  /** Played right after a step that it spoils. */
  | { readonly kind: 'not-on-this-wall'; readonly decoy: DecoyId; readonly after: number }
  /** Waited so many minutes only. */
  | { readonly kind: 'rushed'; readonly step: number; readonly minutes: number }
  | {
      readonly kind: 'out-of-tolerance';
      readonly step: number;
      readonly setting: SettingId;
      readonly value: Quantity;
    };

type Draw = (random: Random) => Flaw;

/** What of this wall can be done wrong, each kind as likely, and within a kind each thing. */
export function flawsOf(sequence: Sequence): (random: Random) => Flaw | undefined {
  const draws = faultKinds
    .map((kind) => drawsOf[kind](sequence))
    .filter((candidates) => candidates.length > 0);
  return (random) => (draws.length > 0 ? pick(random, pick(random, draws))(random) : undefined);
}

const drawsOf: Readonly<Record<FaultKind, (sequence: Sequence) => readonly Draw[]>> = {
  'left-out': ({ steps }) =>
    [...steps.keys()].map((step) => () => ({ kind: 'left-out', step }) as const),

  'out-of-order': ({ order }) =>
    covers(order).map(([before, after]) => (random) => {
      const moved = pick(random, ['before', 'after'] as const);
      return { kind: 'out-of-order', before, after, moved };
    }),

  'not-on-this-wall': ({ steps, strays, joints }) =>
    strays.flatMap((stray): Draw[] => {
      if (stray.kind !== 'decoy') return [];
      const { id: decoy } = stray.decoy;
      const keepers = joints
        .filter(({ spoiltBy }) => spoiltBy.includes(decoy))
        .flatMap(({ keptBy }) => keptBy.map(({ step }) => step));
      const places = [...steps.keys()].filter((place) => keepers.includes(steps[place]!.id));
      if (places.length === 0) return [];
      return [(random) => ({ kind: 'not-on-this-wall', decoy, after: pick(random, places) })];
    }),

  rushed: ({ steps }) =>
    steps.flatMap(({ dries }, step): Draw[] => {
      if (!dries) return [];
      const least = dries.least.value.div(60n);
      return [
        (random) => {
          const part = rational(pick(random, [0, 1, 2, 3]), 4);
          return { kind: 'rushed', step, minutes: approximate(least.mul(part).floor()) };
        },
      ];
    }),

  'out-of-tolerance': ({ steps }) =>
    steps.flatMap(({ asks }, step) =>
      asks.flatMap((ask): Draw[] => {
        const wrong = valuesOf(ask, false);
        if (wrong.length === 0) return [];
        const setting = ask.id;
        return [
          (random) => ({ kind: 'out-of-tolerance', step, setting, value: pick(random, wrong) }),
        ];
      }),
    ),
};

/** The values that can be set and are right, or are not. */
export const valuesOf = ({ rule, sheetNumber: { entry } }: Ask, right: boolean) =>
  entry ? choicesOf(entry).filter((value) => judge(rule, value, entry).within === right) : [];
