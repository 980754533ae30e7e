import { type Spot } from '#engine/tally/spot.ts';
import type { Trouble } from '#engine/tally/where-it-goes-wrong.ts';

export type Listed = { readonly sure: readonly Trouble[]; readonly few: readonly Trouble[] };

const touches = (spot: Spot, step: string): boolean =>
  spot.kind === 'order' ? spot.before === step || spot.after === step : spot.step === step;

/**
 * What went wrong, in the order given. A step as a whole is left out where one of its own parts went wrong
 * as often and so says the same more exactly.
 */
export function listedTroubles(troubles: readonly Trouble[]): Listed {
  const wrong = troubles.filter((trouble) => trouble.wrong > 0);
  const parts = wrong.filter(({ spot }) => spot.kind !== 'step');
  const listed = wrong.filter(
    ({ spot, wrong }) =>
      spot.kind !== 'step' ||
      !parts.some((part) => part.wrong >= wrong && touches(part.spot, spot.step)),
  );
  return {
    sure: listed.filter(({ isTooFew }) => !isTooFew),
    few: listed.filter(({ isTooFew }) => isTooFew),
  };
}
