import type { HeatLevel } from './heat.ts';

/** In pixels; told apart at arm's length. */
export const lineWeights: Readonly<Record<HeatLevel, number>> = {
  0: 1.25,
  1: 2.5,
  2: 4,
  3: 6,
  4: 9,
};
