import type { Attempt, Played } from '#engine/marking/attempt.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { approximate, rational } from '#engine/measure/rational.ts';
import type { DecoyId, SettingId } from '#engine/method/method.ts';
import { precedes } from '#engine/method/partial-order.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import type { Flaw } from './flaw.ts';

/** Work without a fault: a correct order, and a right value for every setting of every step in it. */
export type Plan = {
  readonly order: readonly number[];
  readonly settings: readonly ReadonlyMap<SettingId, Quantity>[];
};

/** The work as planned, but for the flaws. The clock moves on only by waiting, in whole minutes. */
export function builtWith(
  sequence: Sequence,
  { order, settings }: Plan,
  flaws: readonly Flaw[],
): Attempt {
  const steps = flaws.reduce(reordered, order);
  const minutes = minutesOf(sequence, steps, flaws);
  const played = steps.flatMap((step, index): Played[] => {
    const minute = rational(minutes[index]!);
    return [
      {
        card: sequence.steps[step]!.id,
        settings: new Map([...settings[step]!, ...wronglySet(flaws, step)]),
        minute,
      },
      ...decoysAfter(flaws, step).map((card) => ({ card, settings: new Map(), minute })),
    ];
  });
  return { sequence, played };
}

function reordered(steps: readonly number[], flaw: Flaw): readonly number[] {
  if (flaw.kind === 'left-out') return steps.filter((step) => step !== flaw.step);
  if (flaw.kind !== 'out-of-order') return steps;
  const { before, after, moved } = flaw;
  const rest = steps.filter((step) => step !== flaw[moved]);
  return moved === 'after'
    ? rest.toSpliced(rest.indexOf(before), 0, after)
    : rest.toSpliced(rest.indexOf(after) + 1, 0, before);
}

/** When each card comes: at once, or when all that it must wait for has dried, or was thought to have. */
function minutesOf(
  sequence: Sequence,
  steps: readonly number[],
  flaws: readonly Flaw[],
): readonly number[] {
  const rushed = new Map(
    flaws.flatMap((flaw) => (flaw.kind === 'rushed' ? [[flaw.step, flaw.minutes]] : [])),
  );
  const until = new Map<number, number>();
  let now = 0;
  return steps.map((step) => {
    for (const [earlier, minute] of until) {
      if (precedes(sequence.order, earlier, step)) now = Math.max(now, minute);
    }
    const { dries } = sequence.steps[step]!;
    const least = dries ? approximate(dries.least.value.div(60n).ceil()) : 0;
    until.set(step, now + (rushed.get(step) ?? least));
    return now;
  });
}

const wronglySet = (flaws: readonly Flaw[], step: number): readonly [SettingId, Quantity][] =>
  flaws.flatMap((flaw): [SettingId, Quantity][] =>
    flaw.kind === 'out-of-tolerance' && flaw.step === step ? [[flaw.setting, flaw.value]] : [],
  );

const decoysAfter = (flaws: readonly Flaw[], step: number): readonly DecoyId[] =>
  flaws.flatMap((flaw) =>
    flaw.kind === 'not-on-this-wall' && flaw.after === step ? [flaw.decoy] : [],
  );
