/** The choice form of a part: the right answer among those that its slips lead to. */
import { ofBaseUnits } from '#engine/measure/quantity.ts';
import { one, type Rational } from '#engine/measure/rational.ts';
import { randomFrom, shuffle } from '#engine/random.ts';
import type { Text } from '#engine/text.ts';
import type { PartId, RoundRule, SlipId } from './family.ts';
import { inEach } from './fill-text.ts';
import { isPlain } from './formula-kinds.ts';
import type { Amount, Instance, Solved } from './instance.ts';
import { writeAnswer } from './problem.ts';
import { rounded } from './rounding.ts';

export type Choice = {
  readonly value: Amount;
  readonly text: Text;
  readonly isRight: boolean;
  /** The slip that leads to it; none for the right one and for a bad rounding. */
  readonly slip: SlipId | undefined;
};

/** More to choose from than this is reading, not computing. */
const mostChoices = 5;
/** Filled up with neighbours of the right one where the slips are fewer. */
const fewestChoices = 3;

/**
 * In an order drawn by the seed, no two of them written alike. A decision has its two; an amount that
 * is rounded has at least two.
 */
export function choicesOf(
  instance: Instance,
  id: PartId,
  seed: number | string,
): readonly Choice[] {
  const solved = instance.parts.find(({ part }) => part.id === id);
  if (!solved) throw new RangeError(`The problem has no part "${id}".`);
  const random = randomFrom(`${seed}/choices/${instance.takeoff.family.id}/${id}`);
  const right = choice(solved, solved.right, undefined, true);
  const others = solved.slips.map(({ slip, answer }) => choice(solved, answer, slip.id, false));
  const all = [right, ...shuffle(random, others), ...more(solved)];
  const told = new Set<string>();
  const different = all.filter(({ text }) => !told.has(text.en) && told.add(text.en));
  const many = Math.min(mostChoices, Math.max(fewestChoices, 1 + others.length));
  return shuffle(random, different.slice(0, many));
}

const choice = (
  { part }: Solved,
  value: Amount,
  slip: SlipId | undefined,
  isRight: boolean,
): Choice => ({
  value,
  text: inEach((language) => writeAnswer(part.answer, value, language)),
  isRight,
  slip,
});

/** What is left to offer when slips are few: the rounding the other way, a step more, a step less. */
function more(solved: Solved): readonly Choice[] {
  const { part, exact, right } = solved;
  if (typeof right === 'boolean') return [choice(solved, !right, undefined, false)];
  if (part.answer.kind !== 'quantity' || typeof exact === 'boolean') return [];
  const { round } = part.answer;
  const step = round ? stepOf(round) : isPlain(right.dimension) ? one : undefined;
  if (!step) return [];
  const across = round && round.how !== 'nearest' ? [rounded(exact.value, otherWay(round))] : [];
  return [...across, right.value.add(step), right.value.sub(step)]
    .filter((value) => value.gt(0n))
    .map((value) => choice(solved, ofBaseUnits(value, right.dimension), undefined, false));
}

const otherWay = ({ how, to }: RoundRule): RoundRule => ({ to, how: how === 'up' ? 'down' : 'up' });

/** A whole inch where sixteenths are asked, ten steps of another measure: else both would pass. */
const stepOf = ({ how, to }: RoundRule): Rational =>
  how === 'nearest' ? to.value.mul(to.dimension.name === 'length' ? 16n : 10n) : to.value;
