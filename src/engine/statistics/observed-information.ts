/**
 * How sharply the likelihood bends at some parameters: minus its matrix of second derivatives, exactly,
 * as what full knowledge of abilities would tell less what is lost by not having it (T. A. Louis,
 * "Finding the observed information matrix when using the EM algorithm", JRSS B 44, 1982). Its inverse
 * at the maximum holds the squares of the standard errors. Lost is how the slopes of the full
 * likelihood vary together over each pattern's posterior, and right answers enter those only by way of
 * ability, so that patterns of a form can be summed before items are paired: O(patterns x (items^2 +
 * points^2 + items x points) + forms x items x points x (items + points)).
 */
import { curvesAt, type Expectation, fillPosterior } from './expectation.ts';
import type { Form, Patterns } from './patterns.ts';
import type { Quadrature } from './quadrature.ts';

/** Square and symmetric, row by row: the items' slopes, then their intercepts. */
export function observedInformation(
  patterns: Patterns,
  quadrature: Quadrature,
  { parameters, complete }: Expectation,
): Float64Array {
  const { items } = patterns;
  const { points, weights } = quadrature;
  const { chances, logWrong } = curvesAt(points, parameters);
  const width = points.length;
  const base = new Float64Array(width);
  const sums: FormSums = {
    spread: new Float64Array(width * width),
    turns: new Float64Array(items * width),
    low: 0,
    high: 0,
  };
  const lost = new Float64Array(4 * items * items);
  for (const form of patterns.forms) {
    for (let q = 0; q < width; q += 1) base[q] = Math.log(weights[q]!);
    for (const item of form.answered) {
      for (let q = 0; q < width; q += 1) base[q]! += logWrong[item * width + q]!;
    }
    sumPatterns(patterns, form, points, parameters.slopes, base, sums, lost);
    addForm(form, items, points, chances, sums, lost);
  }
  return assembled(items, complete, lost);
}

/** What the patterns of a form come to, at points from `low` up to but not `high`. */
type FormSums = {
  /** Of each pair of points: how the persons' posteriors spread, as of counts drawn from them. */
  readonly spread: Float64Array;
  /** Of each item and point: by how much ability lies above its mean, of those who have the item right. */
  readonly turns: Float64Array;
  low: number;
  high: number;
};

function sumPatterns(
  { items, counts, right, rightFrom }: Patterns,
  { from, to }: Form,
  points: Float64Array,
  slopes: Float64Array,
  base: Float64Array,
  sums: FormSums,
  lost: Float64Array,
): void {
  const { spread, turns } = sums;
  const width = points.length;
  const posterior = new Float64Array(width);
  const turn = new Float64Array(width);
  spread.fill(0);
  turns.fill(0);
  sums.low = width;
  sums.high = 0;
  for (let at = from; at < to; at += 1) {
    const first = rightFrom[at]!;
    const last = rightFrom[at + 1]!;
    let slope = 0;
    for (let r = first; r < last; r += 1) slope += slopes[right[r]!]!;
    fillPosterior(posterior, base, points, slope);
    let low = 0;
    let high = width;
    while (posterior[low] === 0) low += 1;
    while (posterior[high - 1] === 0) high -= 1;
    let sum = 0;
    let mean = 0;
    for (let q = low; q < high; q += 1) {
      sum += posterior[q]!;
      mean += posterior[q]! * points[q]!;
    }
    mean /= sum;
    const count = counts[at]!;
    let variance = 0;
    for (let q = low; q < high; q += 1) {
      posterior[q]! /= sum;
      const off = points[q]! - mean;
      turn[q] = count * posterior[q]! * off;
      variance += turn[q]! * off;
    }
    for (let q = low; q < high; q += 1) {
      const share = count * posterior[q]!;
      spread[q * width + q]! += share;
      for (let r = q; r < high; r += 1) spread[q * width + r]! -= share * posterior[r]!;
    }
    for (let r = first; r < last; r += 1) {
      const item = right[r]!;
      for (let q = low; q < high; q += 1) turns[item * width + q]! += turn[q]!;
      const row = item * 2 * items;
      for (let s = r; s < last; s += 1) lost[row + right[s]!]! += variance;
    }
    sums.low = Math.min(sums.low, low);
    sums.high = Math.max(sums.high, high);
  }
  for (let q = sums.low; q < sums.high; q += 1) {
    for (let r = q + 1; r < sums.high; r += 1) spread[r * width + q] = spread[q * width + r]!;
  }
}

/** What a form loses, for pairs in order of item. */
function addForm(
  { answered }: Form,
  items: number,
  points: Float64Array,
  chances: Float64Array,
  { spread, turns, low, high }: FormSums,
  lost: Float64Array,
): void {
  const width = points.length;
  const side = 2 * items;
  // Of the second item: its chance, and its chance times ability, through the spread.
  const plain = new Float64Array(width);
  const tilted = new Float64Array(width);
  for (const [place, j] of answered.entries()) {
    const ofJ = j * width;
    for (let q = low; q < high; q += 1) {
      let one = 0;
      let other = 0;
      for (let r = low; r < high; r += 1) {
        const part = spread[q * width + r]! * chances[ofJ + r]!;
        one += part;
        other += part * points[r]!;
      }
      plain[q] = one;
      tilted[q] = other - turns[ofJ + q]!;
    }
    for (let before = 0; before <= place; before += 1) {
      const i = answered[before]!;
      const ofI = i * width;
      let slopes = 0;
      let slopeIntercept = 0;
      let interceptSlope = 0;
      let intercepts = 0;
      for (let q = low; q < high; q += 1) {
        const x = points[q]!;
        const p = chances[ofI + q]!;
        const turned = turns[ofI + q]! * chances[ofJ + q]!;
        slopes += x * (p * tilted[q]! - turned);
        slopeIntercept += x * p * plain[q]! - turned;
        interceptSlope += p * tilted[q]!;
        intercepts += p * plain[q]!;
      }
      lost[i * side + j]! += slopes;
      lost[i * side + items + j]! += slopeIntercept;
      if (i < j) lost[j * side + items + i]! += interceptSlope;
      lost[(items + i) * side + items + j]! += intercepts;
    }
  }
}

/** From losses of pairs in order of item; those of a slope with an intercept stand in the slope's row. */
function assembled(
  items: number,
  { slope, both, intercept }: Expectation['complete'],
  lost: Float64Array,
): Float64Array {
  const side = 2 * items;
  const information = new Float64Array(side * side);
  const put = (row: number, column: number, told: number): void => {
    const value = told - lost[row * side + column]!;
    information[row * side + column] = value;
    information[column * side + row] = value;
  };
  for (let i = 0; i < items; i += 1) {
    for (let j = 0; j < items; j += 1) {
      put(i, items + j, i === j ? both[i]! : 0);
      if (j < i) continue;
      put(i, j, i === j ? slope[i]! : 0);
      put(items + i, items + j, i === j ? intercept[i]! : 0);
    }
  }
  return information;
}
