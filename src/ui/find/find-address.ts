import { freshSeed } from '#ui/mockup/fresh-wall.ts';

/** The address of a wall to look over: the method and the seed say all of it. */
export const findAddress = (method: string, seed: string = freshSeed()): string =>
  `/find/${encodeURIComponent(method)}?seed=${encodeURIComponent(seed)}`;
