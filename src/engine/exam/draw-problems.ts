import { randomFrom, shuffle } from '#engine/random.ts';
import type { TakeoffPart } from './scheme.ts';

/** The problems of a part by seed: families take turns, and none comes again before all have come. */
export function drawProblems(
  { families, count }: TakeoffPart,
  seed: number | string,
): readonly { readonly family: string; readonly seed: string }[] {
  const random = randomFrom(`${seed}/problems`);
  const rounds = Math.ceil(count / families.length);
  return Array.from({ length: rounds }, () => shuffle(random, families))
    .flat()
    .slice(0, count)
    .map((family, place) => ({ family, seed: `${seed}/problem/${place}` }));
}
