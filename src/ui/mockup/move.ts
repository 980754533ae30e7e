import type { Attempt } from '#engine/marking/attempt.ts';
import type { AttemptFile, PlayedFile } from '#engine/marking/attempt-file.ts';
import type { Help } from '#engine/marking/guidance.ts';
import { isWait, type Move, playedIn, type PlayedMove, waitedIn } from '#engine/marking/moves.ts';
import { formatExact } from '#engine/measure/format-exact.ts';
import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { rational } from '#engine/measure/rational.ts';
import type { BenchCard } from '#engine/method/bench.ts';
import type { StepId } from '#engine/method/method.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { quantityWords } from '#ui/measure/quantity-words.ts';
import type { WallAddress } from './wall-address.ts';

export { isWait, type Move, playedIn, waitedIn };

/** Help that was taken over a card. It is never given back. */
export type Helped = { readonly help: Help; readonly card: string };

export const cardsIn = (played: readonly PlayedFile[]): ReadonlySet<string> =>
  new Set(played.map(({ step }) => step));

/** What is up, as the engine judges it: each card with its settings as quantities. */
export const attemptOf = (
  sequence: Sequence,
  bench: readonly BenchCard[],
  played: readonly PlayedMove[],
): Attempt => ({
  sequence,
  played: played.map(({ step, settings = {}, minute }) => {
    const asks = bench.find(({ id }) => id === step)?.asks ?? [];
    const made = asks.flatMap(({ id, sheetNumber }) => {
      const read = parseQuantity(settings[id] ?? '', sheetNumber.dimension);
      return read.ok ? [[id, read.value] as const] : [];
    });
    return { card: step as StepId, settings: new Map(made), minute: rational(minute) };
  }),
});

export const attemptFileOf = (
  { method, site }: WallAddress,
  moves: readonly Move[],
): AttemptFile => ({ method, site, steps: playedIn(moves) });

/** As the trade writes it where that says it exactly, so that a kept attempt can be read by people. */
export function quantityText(q: Quantity): string {
  const words = quantityWords(q, 'en');
  const read = parseQuantity(words, q.dimension.name);
  return read.ok && read.value.value.equals(q.value) ? words : formatExact(q);
}
