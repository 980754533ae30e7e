/** The problems of a take-off: drawn by seed, made again from their seeds, and known to be the same ones. */
import type { Content } from '#engine/compile/content.ts';
import { drawProblems } from '#engine/exam/draw-problems.ts';
import type { FormFault } from '#engine/exam/form-request.ts';
import type { TakeoffPart } from '#engine/exam/scheme.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { type Instance, instanceOf } from '#engine/takeoff/instance.ts';
import { problemOf } from '#engine/takeoff/problem.ts';
import { shelfOf } from '../attempts/shelf.ts';
import { namedApart } from './bank-name.ts';
import type { Drawn, KeptPlan } from './plan.ts';
import { printOf } from './print-of.ts';

type Drawing = {
  readonly part: TakeoffPart;
  readonly retired: ReadonlySet<string>;
  readonly seed: string;
};

/** Problems of families that the company has not retired. */
export function drawTakeoff(
  content: Content,
  { part, retired, seed }: Drawing,
): Result<Drawn, readonly FormFault[]> {
  const families = part.families.filter((family) => !retired.has(family));
  const drawn = families.length > 0 ? drawProblems({ ...part, families }, seed) : [];
  const problems = drawn.flatMap((one) => {
    const instance = madeOf(content, one);
    return instance ? [{ ...one, print: printFor(instance) }] : [];
  });
  if (problems.length < part.count) {
    const lack = { topic: part.id, wanted: part.count, there: problems.length };
    return fault([{ code: 'TOO_FEW', ...lack }]);
  }
  return ok({ items: namedApart(problems.map(({ family }) => family)), problems });
}

type Named = { readonly family: string; readonly seed: string };

function madeOf(content: Content, { family, seed }: Named): Instance | undefined {
  const takeoff = shelfOf(content).takeoffOf(family);
  const instance = takeoff && instanceOf(takeoff, seed);
  return instance?.ok ? instance.value : undefined;
}

/** The same for the same words, numbers and answers only. */
const printFor = (instance: Instance): string => {
  const answers = instance.parts.map(({ exact, right }) => [exact, right]);
  return printOf({ problem: problemOf(instance), answers });
};

export type MadeAgain =
  | { readonly kind: 'same'; readonly instance: Instance }
  /** The content has no such family any more, or what it makes of the seed is another problem. */
  | { readonly kind: 'gone' | 'changed' };

export function problemFor(content: Content, plan: KeptPlan, item: string): MadeAgain {
  const problem = plan.problems?.[plan.items.indexOf(item)];
  const instance = problem && madeOf(content, problem);
  if (!instance) return { kind: 'gone' };
  return printFor(instance) === problem.print ? { kind: 'same', instance } : { kind: 'changed' };
}
