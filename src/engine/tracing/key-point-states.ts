/** How sure one may be that a person has each key point, from the reviews of what that person built. */
import { severities } from '#engine/severity.ts';
import type { KeyPoint } from './key-point.ts';
import { type Reviewed, seenIn } from './seen.ts';
import { traced } from './trace.ts';
import { sureFrom, type TraceModel, usualTrace } from './trace-model.ts';

export type KeyPointState = {
  readonly point: KeyPoint;
  /** Whether it was right, in each attempt that could show it, the earliest first. */
  readonly observations: readonly boolean[];
  /** That the person has it now; what the model starts from where it was never seen. */
  readonly probability: number;
  readonly isSure: boolean;
  /** By place in the attempts; undefined where none showed it. */
  readonly lastSeen: number | undefined;
};

/**
 * One state for each point, in their order. The attempts are one person's, the earliest first, on
 * any methods and walls. Give only what was built without hints: what was told is no sign of knowing.
 * O(attempts x points x cards).
 */
export function keyPointStates(
  points: readonly KeyPoint[],
  attempts: readonly Reviewed[],
  model: TraceModel = usualTrace,
): readonly KeyPointState[] {
  const seen = attempts.map(seenIn);
  return points.map((point) => {
    const shown = seen.flatMap((one, at) => {
      const isRight = one(point);
      return isRight === undefined ? [] : [{ isRight, at }];
    });
    const observations = shown.map(({ isRight }) => isRight);
    const probability = traced(model, observations).at(-1)?.next ?? model.known;
    return {
      point,
      observations,
      probability,
      isSure: probability >= sureFrom,
      lastSeen: shown.at(-1)?.at,
    };
  });
}

/**
 * What to practise next: the least sure first, then what is most severe, then what has not been seen
 * for the longest (never comes before long ago), then as given. What is sure is left out.
 */
export const toPractise = (states: readonly KeyPointState[]): readonly KeyPointState[] =>
  states
    .filter(({ isSure }) => !isSure)
    .toSorted(
      (a, b) =>
        a.probability - b.probability ||
        severities.indexOf(b.point.severity) - severities.indexOf(a.point.severity) ||
        (a.lastSeen ?? -1) - (b.lastSeen ?? -1),
    );
