import type { Rational } from '#engine/measure/rational.ts';
import type { Drying } from './sequence.ts';

/** What a knuckle tells: it comes away wet, it strings, or it stays clean. */
export const drynesses = ['wet', 'tacky', 'dry'] as const;
export type Dryness = (typeof drynesses)[number];

/** Tacky from half of the time on: this project's own simplification; dry only when all of it is over. */
export function drynessAfter({ least }: Drying, minutes: Rational): Dryness {
  const seconds = minutes.mul(60n);
  if (seconds.gte(least.value)) return 'dry';
  return seconds.mul(2n).gte(least.value) ? 'tacky' : 'wet';
}
