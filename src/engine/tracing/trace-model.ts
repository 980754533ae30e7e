import { fault, ok, type Result } from '#engine/result.ts';

declare const checked: unique symbol;

/** The four numbers of knowledge tracing, each a probability. */
export type TraceParameters = {
  /** Of knowing it before the first try. */
  readonly known: number;
  /** Of learning it in one try. */
  readonly learn: number;
  /** Of doing wrong what one knows. */
  readonly slip: number;
  /** Of doing right what one does not know. */
  readonly guess: number;
};

/** Parameters that passed `traceModelFrom`: under them a right try never speaks against knowing. */
export type TraceModel = TraceParameters & { readonly [checked]: true };

const names = ['known', 'learn', 'slip', 'guess'] as const;

export type TraceFault =
  | {
      readonly code: 'NOT_A_PROBABILITY';
      readonly parameter: (typeof names)[number];
      readonly message: string;
    }
  | { readonly code: 'RIGHT_MEANS_NOTHING'; readonly message: string };

/** The one door for parameters: every fault at once. */
export function traceModelFrom(
  parameters: TraceParameters,
): Result<TraceModel, readonly TraceFault[]> {
  const faults = names
    .filter((name) => !(parameters[name] >= 0 && parameters[name] <= 1))
    .map((parameter) => ({
      code: 'NOT_A_PROBABILITY' as const,
      parameter,
      message: `"${parameter}" is a number from 0 to 1, not ${parameters[parameter]}.`,
    }));
  if (faults.length > 0) return fault(faults);
  const { slip, guess } = parameters;
  if (1 - slip <= guess) {
    const message =
      `Who knows it would do it right no more often (${1 - slip}) than who does not (${guess}). ` +
      'Make "slip" or "guess" smaller, so that 1 - slip is above guess.';
    return fault([{ code: 'RIGHT_MEANS_NOTHING', message }]);
  }
  return ok({ ...parameters } as TraceModel);
}

/**
 * What is assumed of a key point of a method where nobody has measured it. From memory and common
 * practice in tutoring, not measured on crews:
 * - known .3: most who come have worked on walls, few on this one.
 * - learn .2: one attempt with its review teaches some of what it showed.
 * - slip .1 and guess .2: within the bounds that Corbett and Anderson held theirs to (at most .1 and
 *   .3, from memory). To be right by luck takes more here than a choice of four.
 * Together: three right in a row are sure, two are not.
 */
export const usualTrace = {
  known: 0.3,
  learn: 0.2,
  slip: 0.1,
  guess: 0.2,
} as TraceModel;

/** From here on somebody counts as sure: the threshold of mastery of Corbett and Anderson (1995). */
export const sureFrom = 0.95;
