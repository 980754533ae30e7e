/** The same of the attempts that a browser keeps, worked out there: the methods practised are opened, no other. */
import type { MethodBundle } from '#engine/compile/method-bundle.ts';
import type { KeptAttempt } from '#engine/marking/kept-attempt.ts';
import { markKept } from '#engine/marking/kept-review.ts';
import { mostTried, type PersonPoints, pointsOf, type Tried } from '#engine/tracing/points-of.ts';
import { shelfOf } from '#ui/mockup/inspection.ts';

export type KeptPoints = {
  readonly points: PersonPoints;
  /** How many could not be read: their method does not answer, or no longer has what they name. */
  readonly unread: number;
};

/** `open` gives nothing for a method that is not there, or does not answer. */
export async function keptPoints(
  kept: readonly KeptAttempt[],
  open: (method: string) => Promise<MethodBundle | undefined>,
): Promise<KeptPoints> {
  const own = kept
    .filter(({ mode }) => mode === 'own')
    .toSorted((a, b) => Date.parse(a.finished) - Date.parse(b.finished))
    .slice(-mostTried);
  const ids = [...new Set(own.map(({ attempt }) => attempt.method))];
  const bundles = new Map(await Promise.all(ids.map(async (id) => [id, await open(id)] as const)));
  const tried: Tried[] = [];
  for (const one of own) {
    const bundle = bundles.get(one.attempt.method);
    // A slow phone takes a while: it still answers to a touch in between.
    await new Promise((resolve) => setTimeout(resolve));
    const marked = bundle && markKept(one, shelfOf(bundle));
    if (marked?.ok) tried.push({ ...marked.value, finished: one.finished });
  }
  return { points: pointsOf(tried), unread: own.length - tried.length };
}
