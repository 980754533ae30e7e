import { rational } from '#engine/measure/rational.ts';
import type { MockUpPart } from './scheme.ts';

/** What the review of one wall said. */
export type Built = {
  /** 0 to 100, to a tenth. */
  readonly score: number;
  readonly outcome: 'accept' | 'rework' | 'tear-out';
};

/** Every wall has to reach the pass mark by itself: a good one does not make up for one that leaks. */
export function mockUpResult(part: MockUpPart, built: readonly Built[]): 'passed' | 'failed' {
  const isEnough = built.length >= part.builds;
  return isEnough && built.every((wall) => reaches(part, wall)) ? 'passed' : 'failed';
}

const reaches = ({ passMark, outcome: least }: MockUpPart, { score, outcome }: Built): boolean =>
  rational(Math.round(score * 10), 1000).gte(passMark.value) &&
  (outcome === 'accept' || outcome === least);
