/**
 * What a simulated learner writes for each part of a take-off: the right answer, or where it goes wrong
 * one of the family's named slips, or another wrong answer where it knows none. O(parts x slips).
 */
import { formatExact } from '#engine/measure/format-exact.ts';
import { pick, type Random, randomFrom } from '#engine/random.ts';
import { choicesOf } from '#engine/takeoff/choices.ts';
import type { Part, PartId } from '#engine/takeoff/family.ts';
import { type Amount, type Instance, type Solved, valueOf } from '#engine/takeoff/instance.ts';
import type { Written } from '#engine/takeoff/marks.ts';
import { writeAnswer } from '#engine/takeoff/problem.ts';
import { readAnswer } from '#engine/takeoff/read-answer.ts';
import { isSame } from '#engine/takeoff/slate.ts';
import { errs, type Learner } from './learner.ts';

export function answersOf(
  instance: Instance,
  learner: Learner,
  seed: number | string,
): ReadonlyMap<PartId, Written> {
  const { id: family } = instance.takeoff.family;
  const random = randomFrom(`${seed}/simulation/${family}`);
  return new Map(
    instance.parts.map((solved) => {
      const isWrong = errs(random, learner, 'slip', `${family}/${solved.part.id}`);
      const value = isWrong ? wrongAnswer(instance, solved, seed, random) : solved.right;
      return [solved.part.id, { text: textOf(solved.part, value) }];
    }),
  );
}

function wrongAnswer(
  instance: Instance,
  { part, slips, right }: Solved,
  seed: number | string,
  random: Random,
): Amount {
  if (slips.length > 0) return pick(random, slips).answer;
  const others = choicesOf(instance, part.id, seed).filter(({ isRight }) => !isRight);
  return others.length > 0 ? pick(random, others).value : right;
}

/** As a person would write it, where that reads back as the same; else exactly. */
function textOf(part: Part, value: Amount): string {
  const ways = [false, true].map((isHonest) => writeAnswer(part.answer, value, 'en', isHonest));
  const read = ways.find((text) => {
    const reading = readAnswer(part, text);
    return reading.ok && isSame(valueOf(reading.value.value), valueOf(value));
  });
  return read ?? (typeof value === 'boolean' ? ways[0]! : formatExact(value));
}
