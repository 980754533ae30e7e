import type { Quantity } from '#engine/measure/quantity.ts';
import type { Rational } from '#engine/measure/rational.ts';
import type { DecoyId, SettingId, StepId } from '#engine/method/method.ts';
import type { Sequence } from '#engine/method/sequence.ts';

/** The cards that somebody played on one wall, in order. Right once it passed `attemptFrom`. */
export type Attempt = {
  readonly sequence: Sequence;
  readonly played: readonly Played[];
};

export type Played = {
  readonly card: StepId | DecoyId;
  /** Settings that were not given are not judged. */
  readonly settings: ReadonlyMap<SettingId, Quantity>;
  /** Reading of the simulated clock when the card was played. */
  readonly minute: Rational | undefined;
};

/** A step of the sequence that was played, the first time it was. */
export type Standing = Played & { readonly step: number; readonly at: number };

/** The steps of the sequence in the order in which they were first played. */
export function standingOf({ sequence, played }: Attempt): readonly Standing[] {
  const place = new Map(sequence.steps.map(({ id }, index) => [id as string, index]));
  const seen = new Set<string>();
  return played.flatMap((card, at) => {
    const step = place.get(card.card);
    if (step === undefined || seen.has(card.card)) return [];
    seen.add(card.card);
    return [{ ...card, step, at }];
  });
}
