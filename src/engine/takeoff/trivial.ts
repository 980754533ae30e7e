import { equals, isZero, whole } from './exact.ts';
import type { Part } from './family.ts';
import { isPlain } from './formula-kinds.ts';
import type { Value } from './formula.ts';
import { isSame, workOut, type Slate } from './slate.ts';

const one = whole(1);

/** Nothing, one of something, or a number that stands in the problem: no answer to work for. */
export function isTrivial(part: Part, answer: Value, slate: Slate): boolean {
  if (part.mayBeTrivial || typeof answer === 'boolean') return false;
  if (isZero(answer) || (isPlain(part.term.kind) && equals(answer, one))) return true;
  const names = slate.definitions.likeAnswer.get(part.id) ?? [];
  return names.some((name) => isSame(workOut(name, slate), answer));
}
