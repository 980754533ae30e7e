import type { Quantity } from '#engine/measure/quantity.ts';
import { pick, type Random, shuffle } from '#engine/random.ts';
import type { Text } from '#engine/text.ts';
import type { DecoyId, HazardId, Step, StepId } from './method.ts';
import { choicesOf } from './offered.ts';
import { fixRule, judge } from './rule.ts';
import type { Ask, Sequence } from './sequence.ts';
import type { Site, SiteQuestion } from './site.ts';

/** A card to build with. It says nothing of whether it belongs on the wall. */
export type BenchCard = {
  readonly id: StepId | DecoyId;
  readonly say: Text;
  readonly hazards: readonly HazardId[];
  readonly asks: readonly Ask[];
};

/** Steps of other walls that lie on a bench, at most: enough to make one read the site. */
export const mostFromElsewhere = 4;

/** The steps, the decoys and a few steps of other walls, shuffled together. */
export function benchOf(sequence: Sequence, random: Random): readonly BenchCard[] {
  const decoys = sequence.strays.flatMap((stray) =>
    stray.kind === 'decoy' ? [{ ...stray.decoy, asks: [] }] : [],
  );
  const elsewhere = sequence.strays.flatMap((stray) =>
    stray.kind === 'other-site'
      ? [{ ...stray.step, asks: asksElsewhere(stray.step, sequence) }]
      : [],
  );
  const few = shuffle(random, elsewhere).slice(0, mostFromElsewhere);
  return shuffle(random, [...sequence.steps, ...decoys, ...few]).map(
    ({ id, say, hazards, asks }) => ({ id, say, hazards, asks }),
  );
}

/** A step of another wall asks for its settings as it would there, or it would give itself away. */
const asksElsewhere = (step: Step, { dataSheet, weather }: Sequence): readonly Ask[] =>
  step.settings.flatMap((setting) => {
    const sheetNumber = dataSheet.numbers.get(setting.number);
    return sheetNumber
      ? [{ ...setting, sheetNumber, rule: fixRule(sheetNumber.rule, weather) }]
      : [];
  });

/** Where a setting stands before anybody sets it: any choice, but a wrong one if there is one. */
export function startingValue({ rule, sheetNumber }: Ask, random: Random): Quantity | undefined {
  const { entry } = sheetNumber;
  if (!entry) return undefined;
  const choices = choicesOf(entry);
  const wrong = choices.filter((value) => !judge(rule, value).within);
  return pick(random, wrong.length > 0 ? wrong : choices);
}

/** Any wall that the questions can describe, each as likely. */
export const anySite = (questions: readonly SiteQuestion[], random: Random): Site =>
  Object.fromEntries(questions.map(({ id, values }) => [id, pick(random, values).id]));
