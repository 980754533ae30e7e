/** The walls of a mock-up part: drawn by seed, found again by their plan, and known to ask the same. */
import type { Content } from '#engine/compile/content.ts';
import { drawWalls } from '#engine/exam/draw-walls.ts';
import type { FormFault } from '#engine/exam/form-request.ts';
import type { MockUpPart, Scheme } from '#engine/exam/scheme.ts';
import type { AttemptFile } from '#engine/marking/attempt-file.ts';
import { type Move, playedIn } from '#engine/marking/moves.ts';
import type { Method, MethodId } from '#engine/method/method.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { siteFrom, type Site } from '#engine/method/site.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { shelfOf } from '../attempts/shelf.ts';
import type { Drawn, KeptPlan } from './plan.ts';
import { printOf } from './print-of.ts';
import { wallName } from './wall-name.ts';

type Drawing = {
  readonly scheme: Scheme;
  readonly part: MockUpPart;
  readonly retired: ReadonlySet<string>;
  readonly seed: string;
};

/** Walls that the scheme covers, without those that the company has retired. */
export function drawMockUp(
  content: Content,
  { scheme, part, retired, seed }: Drawing,
): Result<Drawn, readonly FormFault[]> {
  const method = content.methods.get(part.method);
  const sites = method ? drawWalls(scheme, { ...part, builds: Infinity }, method, seed) : [];
  const walls: NonNullable<KeptPlan['walls']>[number][] = [];
  for (const site of sites) {
    // To print a wall costs its whole sequence: no more of them than are built.
    if (walls.length === part.builds) break;
    const sequence = method && sequenceFor(content, method, site);
    if (!sequence || retired.has(wallName(method, site))) continue;
    walls.push({ method: method.id, site, print: printFor(sequence) });
  }
  if (!method || walls.length < part.builds) {
    const lack = { topic: part.id, wanted: part.builds, there: walls.length };
    return fault([{ code: 'TOO_FEW', ...lack }]);
  }
  return ok({ items: walls.map(({ site }) => wallName(method, site)), walls });
}

function sequenceFor(content: Content, method: Method, site: Site): Sequence | undefined {
  const sheet = content.dataSheets.get(method.dataSheet);
  const sequence = sheet && shelfOf(content).sequenceOf?.(method, sheet, site);
  return sequence?.ok ? sequence.value : undefined;
}

/** The same for the same steps, order, settings and waits; what only reads otherwise makes no other wall. */
function printFor({ steps, constraints, strays }: Sequence): string {
  const asked = {
    steps: steps.map(({ id, asks, dries }) => [
      id,
      asks.map(({ id: setting, rule }) => [setting, rule]),
      dries && [dries.least, dries.margin],
    ]),
    order: constraints.map(({ before, after, severity }) => [before, after, severity]),
    strays: strays.map((stray) => (stray.kind === 'decoy' ? stray.decoy.id : stray.step.id)),
  };
  return printOf(asked);
}

export type DrawnWall = { readonly sequence: Sequence; readonly site: Site };

export type FoundWall =
  | { readonly kind: 'same'; readonly wall: DrawnWall }
  /** The content has no such wall any more, or asks something else of it. */
  | { readonly kind: 'gone' | 'changed' };

export function wallFor(content: Content, plan: KeptPlan, item: string): FoundWall {
  const drawn = plan.walls?.[plan.items.indexOf(item)];
  const method = drawn && content.methods.get(drawn.method as MethodId);
  const site = method && siteFrom(method.site, drawn.site);
  const sequence = site?.ok ? sequenceFor(content, method!, site.value) : undefined;
  if (!drawn || !sequence) return { kind: 'gone' };
  return printFor(sequence) === drawn.print
    ? { kind: 'same', wall: { sequence, site: drawn.site } }
    : { kind: 'changed' };
}

export const attemptFileFor = (
  { sequence, site }: DrawnWall,
  moves: readonly Move[],
): AttemptFile => ({ method: sequence.method.id, site, steps: playedIn(moves) });
