import type { AttemptMode } from '#engine/marking/kept-attempt.ts';
import { anySite } from '#engine/method/bench.ts';
import type { Method } from '#engine/method/method.ts';
import { randomFrom } from '#engine/random.ts';
import { addressOf, type WallAddress } from './wall-address.ts';

/** A seed that nobody chose, short enough to read out over the phone. */
export const freshSeed = (): string => String(1 + Math.floor(Math.random() * 9999));

/** Any wall of a method: the site follows from the seed. */
export const anyWall = (
  { id, site }: Pick<Method, 'id' | 'site'>,
  mode: AttemptMode,
  seed: string,
): WallAddress => ({
  method: id,
  site: anySite(site, randomFrom(`${seed}/site`)),
  mode,
  seed,
});

export const anyWallAddress = (
  method: Pick<Method, 'id' | 'site'>,
  mode: AttemptMode,
  seed: string = freshSeed(),
): string => addressOf(anyWall(method, mode, seed));
