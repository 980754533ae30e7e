import type { ItemModel } from './item-model.ts';

/** Why an item has no curve: nothing in the answers says how hard it is. */
export type NotEstimable = 'all-right' | 'all-wrong' | 'too-few-answers';

/** Errors are standard errors; that of a slope that was given is undefined. */
export type ItemEstimate = { readonly item: number; readonly answers: number } & (
  | { readonly estimable: false; readonly reason: NotEstimable }
  | {
      readonly estimable: true;
      readonly slope: number;
      readonly slopeError: number | undefined;
      readonly intercept: number;
      readonly interceptError: number;
      /** The ability at which a right answer is as likely as a wrong one. */
      readonly difficulty: number;
      readonly difficultyError: number;
    }
);

type Run = {
  readonly model: ItemModel;
  /** With an answer to an item that could be estimated. */
  readonly persons: number;
  readonly patterns: number;
  /** How often the likelihood was computed. */
  readonly cycles: number;
  /** The steepest slope of the log-likelihood in any free parameter, divided by persons. */
  readonly steepest: number;
  readonly logLikelihood: number;
};

export type ConvergedFit = Run & {
  readonly outcome: 'converged';
  readonly freeParameters: number;
  /** Akaike's and the Bayesian criterion: lower is better. */
  readonly aic: number;
  readonly bic: number;
  /** One for each item, in order. */
  readonly items: readonly ItemEstimate[];
};

/** It holds no estimates: where a run stopped short says nothing of the items. */
export type StoppedFit = Run & {
  readonly outcome: 'not-converged';
  /**
   * `slope-runs-away`: the answers are told best by a curve that grows ever steeper, as happens with
   * few persons.
   * `stuck`: no step leads higher though the likelihood is not level, or it is level and not a maximum.
   */
  readonly reason: 'out-of-cycles' | 'slope-runs-away' | 'stuck';
};

export type ItemFit = ConvergedFit | StoppedFit;

/** Why there are no curves though there are persons enough. */
export type NoCurves =
  | Pick<StoppedFit, 'outcome' | 'reason' | 'cycles'>
  /** Fewer than two items with answers that differ. */
  | { readonly outcome: 'nothing-to-fit' };

/** What a run says of one item, with how many cycles it took to settle. */
export type CurveSaid =
  | { readonly outcome: 'converged'; readonly cycles: number; readonly estimate: ItemEstimate }
  | NoCurves;

export type FitFault = {
  readonly code: 'TOO_FEW_ITEMS' | 'NOT_A_LIMIT';
  readonly message: string;
};
