import type { Text } from '#engine/text.ts';
import { areAlike } from '#engine/written/fitted.ts';
import type { WrongChoice } from '#engine/written/question.ts';

export const leastWrong = 2;
const mostWrong = 3;

/** The first wrong choices that read like neither the right one nor each other; undefined where too few. */
export function unlike(
  right: Text,
  candidates: readonly WrongChoice[],
): readonly WrongChoice[] | undefined {
  const kept: WrongChoice[] = [];
  for (const candidate of candidates) {
    const others = [right, ...kept.map(({ say }) => say)];
    if (!others.some((other) => areAlike(other, candidate.say))) kept.push(candidate);
    if (kept.length === mostWrong) break;
  }
  return kept.length >= leastWrong ? kept : undefined;
}
