/**
 * Marks all parts of a problem together. A later part is judged by the right answers and, where it is
 * not right by those, by the person's own earlier ones: a wrong first part, used rightly, does not cost
 * the second.
 */
import type { MeasureFault } from '#engine/measure/fault.ts';
import { commonDimension } from '#engine/measure/dimension.ts';
import type { Result } from '#engine/result.ts';
import type { Text } from '#engine/text.ts';
import type { Part, PartId } from './family.ts';
import { solve, valueOf, type Amount, type Instance, type Solved } from './instance.ts';
import { filledText } from './problem.ts';
import { readAnswer, type Reading } from './read-answer.ts';
import { isSame, type Slate } from './slate.ts';
import type { Style } from './style.ts';
import { slateOf } from './takeoff.ts';
import { judge, type Verdict } from './verdict.ts';
import { followed } from './verdict-words.ts';

/** What a person wrote for a part, and the unit picked beside it. */
export type Written = { readonly text: string; readonly picked?: Style };

export type Mark = {
  readonly part: PartId;
  readonly solved: Solved;
  /** How it was read, or why it could not be; undefined where nothing was written. */
  readonly reading: Result<Reading, MeasureFault> | undefined;
  readonly verdict: Verdict | undefined;
  /** Of this part: 1 for right, a half for right but badly rounded. */
  readonly credit: 0 | 0.5 | 1;
};

/** One mark for each part, in their order. */
export function markAnswers(
  instance: Instance,
  answers: ReadonlyMap<PartId, Written>,
): readonly Mark[] {
  const earlier = new Map<PartId, Amount>();
  return instance.parts.map((solved) => {
    const { part } = solved;
    const given = answers.get(part.id);
    const reading =
      given && given.text.trim() !== '' ? readAnswer(part, given.text, given.picked) : undefined;
    const verdict = reading?.ok
      ? judgeAnswer(instance, part.id, reading.value, earlier)
      : undefined;
    if (reading?.ok) earlier.set(part.id, reading.value.value);
    return { part: part.id, solved, reading, verdict, credit: creditOf(verdict) };
  });
}

/** What a part is worth by its verdict. */
export const creditOf = (verdict: Verdict | undefined): Mark['credit'] =>
  verdict?.kind === 'right' ? 1 : verdict?.kind === 'badly-rounded' ? 0.5 : 0;

/** Throws a RangeError where the problem has no such part. */
export function judgeAnswer(
  instance: Instance,
  id: PartId,
  reading: Reading,
  earlier: ReadonlyMap<PartId, Amount> = new Map(),
): Verdict {
  const solved = instance.parts.find(({ part }) => part.id === id);
  if (!solved) throw new RangeError(`The problem has no part "${id}".`);
  const tell = (text: Text) => filledText(instance, text);
  const plain = judge(solved, reading, tell);
  if (plain.kind === 'right') return plain;
  const own = solveAfter(instance, solved.part, earlier);
  if (!own) return plain;
  const byOwn = judge(own, reading, tell);
  if (byOwn.kind === 'right') return { ...byOwn, say: followed, followed: true };
  return byOwn.kind !== 'wrong' && plain.kind === 'wrong' ? { ...byOwn, followed: true } : plain;
}

/** The part solved from the person's own answers, where they differ and still make sense. */
function solveAfter(
  { takeoff, parts, slate }: Instance,
  part: Part,
  earlier: ReadonlyMap<PartId, Amount>,
): Solved | undefined {
  const differing = parts.filter(({ part: { id, term }, right }) => {
    const given = earlier.get(id);
    return (
      given !== undefined && isOfKind(given, term.kind) && !isSame(valueOf(given), valueOf(right))
    );
  });
  if (differing.length === 0) return undefined;
  const own: Slate = slateOf(takeoff);
  for (const { term, from } of takeoff.family.givens) {
    const drawn = from.kind === 'range' || from.kind === 'one-of' || from.kind === 'either';
    if (drawn) own.values[term.place] = slate.values[term.place];
  }
  for (const { part } of differing) own.values[part.term.place] = valueOf(earlier.get(part.id)!);
  try {
    return solve(part, own);
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

const isOfKind = (given: Amount, kind: Part['term']['kind']): boolean =>
  typeof given === 'boolean' || kind === 'truth'
    ? typeof given === 'boolean' && kind === 'truth'
    : commonDimension(given.dimension, kind) !== undefined;
