import type { MethodBundle } from '#engine/compile/method-bundle.ts';
import type { AttemptFault } from '#engine/marking/attempt-file.ts';
import type { Shelf } from '#engine/marking/attempt-from.ts';
import type { KeptAttempt } from '#engine/marking/kept-attempt.ts';
import { type Marked, markKept } from '#engine/marking/kept-review.ts';
import { ok, type Result } from '#engine/result.ts';
import type { Work } from './mockup.svelte.ts';
import { attemptFileOf } from './move.ts';
import type { WallAddress } from './wall-address.ts';

export type Inspected = { readonly kept: KeptAttempt; readonly marked: Marked };

/** What a bundle has to mark its own method with. */
export const shelfOf = ({ method, dataSheet }: MethodBundle): Shelf => ({
  methods: new Map([[method.id, method]]),
  dataSheets: new Map([[dataSheet.id, dataSheet]]),
});

/** Marks what was built, and makes of it the attempt that is kept. */
export function inspect(
  bundle: MethodBundle,
  wall: WallAddress,
  { moves, helped }: Work,
  { id, finished }: { readonly id: string; readonly finished: string },
): Result<Inspected, readonly AttemptFault[]> {
  const attempt = attemptFileOf(wall, moves);
  const help = helped.map((one) => one.help);
  const part = wall.part ? { part: wall.part } : {};
  const marked = markKept({ attempt, help, ...part }, shelfOf(bundle));
  if (!marked.ok) return marked;
  const { score, review } = marked.value;
  const kept: KeptAttempt = {
    id,
    finished,
    mode: wall.mode,
    seed: wall.seed,
    ...part,
    ...(wall.work ? { work: wall.work } : {}),
    help,
    revision: bundle.revision,
    score,
    outcome: review.outcome,
    attempt,
  };
  return ok({ kept, marked: marked.value });
}

/** A kept attempt, marked against the content of today. */
export function inspectedFrom(
  kept: KeptAttempt,
  bundle: MethodBundle,
): Result<Inspected, readonly AttemptFault[]> {
  const marked = markKept(kept, shelfOf(bundle));
  return marked.ok ? ok({ kept, marked: marked.value }) : marked;
}
