/**
 * How likely somebody of some ability is to get an item right: the logistic curve of two parameters (A.
 * Birnbaum, in F. M. Lord, M. R. Novick, "Statistical theories of mental test scores", 1968, ch. 17),
 * and how much an answer tells of the ability. Abilities are on a scale on which the persons estimated
 * from have mean 0 and sd 1.
 */
export type ItemCurve = {
  /** By how much the log odds of a right answer grow with ability; below 0 the item pulls the wrong way. */
  readonly slope: number;
  /** The log odds of a right answer at ability 0. */
  readonly intercept: number;
};

/** The ability at which a right answer is as likely as a wrong one; not finite for a slope of 0. */
export const difficultyOf = ({ slope, intercept }: ItemCurve): number => -intercept / slope;

export const chanceOf = ({ slope, intercept }: ItemCurve, ability: number): number =>
  1 / (1 + Math.exp(-(slope * ability + intercept)));

/** Fisher's, of one answer: slope squared times p (1 - p). */
export function itemInformation(curve: ItemCurve, ability: number): number {
  const chance = chanceOf(curve, ability);
  return curve.slope * curve.slope * chance * (1 - chance);
}

/** Of all answers together. One over its root is the error of an ability estimated from them alone. */
export const testInformation = (curves: readonly ItemCurve[], ability: number): number =>
  curves.reduce((sum, curve) => sum + itemInformation(curve, ability), 0);
