/**
 * The likelihood of all answers with abilities integrated out, and its slopes in every parameter: the
 * expectation step of marginal maximum likelihood (R. D. Bock, M. Aitkin, Psychometrika 46, 1981),
 * whose expected slopes are those of the likelihood itself (Fisher's identity). Under the logistic
 * curve a pattern's likelihood at an ability depends on the slopes of its right answers only through
 * their sum (A. Birnbaum 1968), so that a pattern costs items + points, not items x points: O(patterns
 * x (items + points) + forms x items x points).
 */
import type { Patterns } from './patterns.ts';
import type { Quadrature } from './quadrature.ts';

/** By item. */
export type Parameters = { readonly slopes: Float64Array; readonly intercepts: Float64Array };

export type Expectation = {
  readonly parameters: Parameters;
  readonly logLikelihood: number;
  /** Slopes of the log-likelihood: in the items' slopes, then in their intercepts. */
  readonly gradient: Float64Array;
  /** What full knowledge of abilities would tell of each item: in slope, in both, in intercept. */
  readonly complete: {
    readonly slope: Float64Array;
    readonly both: Float64Array;
    readonly intercept: Float64Array;
  };
};

/** Points at which a posterior is below this share of its peak, about 4e-18, add nothing to a double. */
const negligible = -40;

export function expectation(
  patterns: Patterns,
  { points, weights }: Quadrature,
  parameters: Parameters,
): Expectation {
  const { items, counts, right, rightFrom, rights, forms } = patterns;
  const { slopes, intercepts } = parameters;
  const width = points.length;
  const { chances, logWrong } = curvesAt(points, parameters);
  const persons = new Float64Array(items * width);
  const abilities = new Float64Array(items);
  const base = new Float64Array(width);
  const posterior = new Float64Array(width);
  const inForm = new Float64Array(width);
  let logLikelihood = 0;

  for (const { from, to, answered } of forms) {
    for (let q = 0; q < width; q += 1) base[q] = Math.log(weights[q]!);
    for (const item of answered) {
      for (let q = 0; q < width; q += 1) base[q]! += logWrong[item * width + q]!;
    }
    inForm.fill(0);
    for (let at = from; at < to; at += 1) {
      const [first, last] = [rightFrom[at]!, rightFrom[at + 1]!];
      let [slope, intercept] = [0, 0];
      for (let r = first; r < last; r += 1) {
        slope += slopes[right[r]!]!;
        intercept += intercepts[right[r]!]!;
      }
      const peak = fillPosterior(posterior, base, points, slope);
      let [sum, moment] = [0, 0];
      for (let q = 0; q < width; q += 1) {
        sum += posterior[q]!;
        moment += posterior[q]! * points[q]!;
      }
      const count = counts[at]!;
      logLikelihood += count * (peak + Math.log(sum) + intercept);
      const share = count / sum;
      for (let q = 0; q < width; q += 1) inForm[q]! += posterior[q]! * share;
      const ability = moment * share;
      for (let r = first; r < last; r += 1) abilities[right[r]!]! += ability;
    }
    for (const item of answered) {
      for (let q = 0; q < width; q += 1) persons[item * width + q]! += inForm[q]!;
    }
  }

  const gradient = new Float64Array(2 * items);
  const complete = {
    slope: new Float64Array(items),
    both: new Float64Array(items),
    intercept: new Float64Array(items),
  };
  for (let item = 0; item < items; item += 1) {
    let [g, h, aa, ad, dd] = [abilities[item]!, rights[item]!, 0, 0, 0];
    for (let q = 0; q < width; q += 1) {
      const [x, p] = [points[q]!, chances[item * width + q]!];
      const expected = persons[item * width + q]! * p;
      const told = expected * (1 - p);
      g -= expected * x;
      h -= expected;
      aa += told * x * x;
      ad += told * x;
      dd += told;
    }
    gradient[item] = g;
    gradient[items + item] = h;
    complete.slope[item] = aa;
    complete.both[item] = ad;
    complete.intercept[item] = dd;
  }
  return { parameters, logLikelihood, gradient, complete };
}

/** Leaves in `posterior` what is proportional to it, 1 at its peak; gives the logarithm of that peak. */
export function fillPosterior(
  posterior: Float64Array,
  base: Float64Array,
  points: Float64Array,
  slope: number,
): number {
  let peak = -Infinity;
  for (let q = 0; q < points.length; q += 1) {
    const log = slope * points[q]! + base[q]!;
    posterior[q] = log;
    if (log > peak) peak = log;
  }
  for (let q = 0; q < points.length; q += 1) {
    const log = posterior[q]! - peak;
    posterior[q] = log < negligible ? 0 : Math.exp(log);
  }
  return peak;
}

/** At each point, of each item: the chance of a right answer, and the logarithm of that of a wrong one. */
export function curvesAt(points: Float64Array, { slopes, intercepts }: Parameters) {
  const width = points.length;
  const chances = new Float64Array(slopes.length * width);
  const logWrong = new Float64Array(slopes.length * width);
  for (let item = 0; item < slopes.length; item += 1) {
    for (let q = 0; q < width; q += 1) {
      const odds = slopes[item]! * points[q]! + intercepts[item]!;
      chances[item * width + q] = 1 / (1 + Math.exp(-odds));
      logWrong[item * width + q] = -(Math.max(odds, 0) + Math.log1p(Math.exp(-Math.abs(odds))));
    }
  }
  return { chances, logWrong };
}
