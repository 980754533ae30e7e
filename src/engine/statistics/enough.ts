/**
 * From how many answers a figure is shown. Below that its 95 % interval is so wide that the figure
 * would say what is not known; each number but that of judges is the smallest that keeps a promise,
 * which a test holds it to.
 */
export const fewest = {
  /**
   * Answers to an item, for its share right: the Wilson interval then reaches 0.2 to either side at
   * most.
   */
  proportion: 21,
  /**
   * Answers, for a correlation with the rest: that of a sound question, 0.3, is then told from 0 by
   * Fisher's transformation, atanh(0.3) > 1.96 / root of (n - 3).
   */
  correlation: 44,
  /**
   * Persons in each group, for a difference between groups: at half right and half wrong, a large one
   * (1.5 on the delta scale, an odds ratio of 1.89) is then told from none, 1.5 / 2.35 > 1.96 x root of
   * (8 / n).
   */
  group: 76,
  /**
   * Persons who answered all, for KR-20: 0.7 is then told from 0.5 on a test of ten items or more
   * (`kr20Interval`).
   */
  reliability: 35,
  /**
   * Cases that two examiners judged, for kappa: where they agree on 80 % and chance gives 50 %, its
   * interval reaches 0.25 to either side, 1.96 x root of (0.8 x 0.2 / n) / 0.5.
   */
  cases: 40,
  /**
   * Judges of a panel, for an Angoff cut. Common practice, from memory; about 15 are most precise
   * (pmc.ncbi.nlm.nih.gov/articles/PMC4855704).
   */
  judges: 5,
} as const;

/**
 * Persons, for curves of items. Errors are those of made-up answers to 20 items, as the bench of their
 * recovery prints them, which agree with common practice: about 100, and 250 to 500.
 */
export const fewestForCurves = {
  /** Intercepts then have an error of 0.29, which tells easy from middling; slopes of 1 one of 0.10. */
  'slope-common': 100,
  /**
   * Slopes from 0.6 to 1.8 then have an error of 0.28; with 100 persons some run away, and the others
   * come out 0.1 too steep.
   */
  'slope-each': 250,
} as const;

export type Enough<T> =
  | { readonly enough: true; readonly value: T }
  | { readonly enough: false; readonly have: number; readonly need: number };

/** The figure, or how many answers there are and would be needed; what it takes is computed only then. */
export const ifEnough = <T>(have: number, need: number, value: () => T): Enough<T> =>
  have >= need ? { enough: true, value: value() } : { enough: false, have, need };
