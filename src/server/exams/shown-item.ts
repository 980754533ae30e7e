/**
 * What a candidate gets to see of one item: never a key, never a reason, and of a wall its picture and not
 * what was done on it.
 */
import type { Content } from '#engine/compile/content.ts';
import { seenWall, type SeenWall } from '#engine/inspection/seen-wall.ts';
import { askedOf, type AskedProblem } from '#engine/takeoff/asked.ts';
import type { Text } from '#engine/text.ts';
import { hiddenWall } from '#engine/written/hidden-wall.ts';
import { posed, type Posed } from '#engine/written/posed.ts';
import type { Question } from '#engine/written/question.ts';
import { shelfOf } from '../attempts/shelf.ts';
import type { KeptPlan } from './plan.ts';
import { type ShownWall, shownWall } from './shown-wall.ts';
import { problemFor } from './takeoff-part.ts';
import { questionsOf } from './written-bank.ts';

/** A question with choices, or one that asks for a number. */
export type AskedQuestion = Exclude<Posed, { readonly kind: 'find-fault' }>;

export type ShownItem =
  | { readonly kind: 'question'; readonly posed: AskedQuestion }
  | { readonly kind: 'find-fault'; readonly ask: Text; readonly wall: SeenWall }
  | { readonly kind: 'problem'; readonly problem: AskedProblem }
  | { readonly kind: 'wall'; readonly wall: ShownWall };

/** Undefined where the content no longer has it: it is left out of the score then. */
export function shownItem(
  content: Content,
  plan: KeptPlan,
  item: string,
  { key, given }: { readonly key: string; readonly given: string | undefined },
): ShownItem | undefined {
  if (plan.walls) {
    const wall = shownWall(content, plan, item, given);
    return wall && { kind: 'wall', wall };
  }
  if (!plan.problems) return shownQuestion(content, plan, item, key);
  const found = problemFor(content, plan, item);
  return found.kind === 'same' ? { kind: 'problem', problem: askedOf(found.instance) } : undefined;
}

function shownQuestion(
  content: Content,
  plan: KeptPlan,
  item: string,
  key: string,
): ShownItem | undefined {
  const question = questionsOf(content).get(item);
  const put = question && posed(question, plan.seed, shelfOf(content));
  if (!question || !put) return undefined;
  if (put.kind !== 'find-fault' || question.kind !== 'find-fault') {
    return { kind: 'question', posed: { ...(put as AskedQuestion), question: named(key) } };
  }
  const wall = wallOf(content, question);
  return wall && { kind: 'find-fault', ask: put.ask, wall };
}

/** Its usual name can be reckoned from the content, which anybody may read. */
const named = (key: string): Posed['question'] => key as Posed['question'];

const walls = new WeakMap<Content, Map<string, SeenWall | undefined>>();

/** Drawing one takes some reviews, and it is the same for everybody. */
function wallOf(
  content: Content,
  question: Extract<Question, { readonly kind: 'find-fault' }>,
): SeenWall | undefined {
  const known = walls.get(content) ?? new Map<string, SeenWall | undefined>();
  walls.set(content, known);
  if (!known.has(question.id)) {
    const hidden = hiddenWall(question, shelfOf(content));
    known.set(question.id, hidden && seenWall(hidden.attempt));
  }
  return known.get(question.id);
}
