/**
 * A made-up person who learns, for demonstrations and for testing what looks at many attempts. It is a
 * model, not a measurement of anybody.
 *
 * Each key point of a method goes wrong with a chance that is logistic in its difficulty, less the
 * person's ability, less what practice has taught: the additive factors model (H. Cen, K. Koedinger,
 * B. Junker, "Learning factors analysis", ITS 2006; from memory). Difficulties are this project's own
 * choice: by kind, then spread by a hash of the key point's name, so that the same points are hard for
 * everybody. Chances are cut to ten-thousandths, so that the last digit of an exponential, which may
 * differ between machines, decides nothing.
 */
import { hashText, type Random, whole } from '#engine/random.ts';

export type Learner = {
  /** In logits: 0 is usual, 2 very able; Infinity makes no mistakes. */
  readonly ability: number;
  /** Logits gained by each attempt; 0.3 halves the usual person's mistakes in two or three. */
  readonly learning: number;
  /** Attempts made so far on this kind of work. */
  readonly practised: number;
};

export const mistakeKinds = ['left-out', 'swapped', 'off', 'rushed', 'stray', 'slip'] as const;
export type MistakeKind = (typeof mistakeKinds)[number];

/**
 * In logits: how hard the usual point of a kind is to get right at first. At 0 one in two goes wrong,
 * at -3 about one in twenty. A number is easier to miss than a step to forget.
 */
const difficulty: Readonly<Record<MistakeKind, number>> = {
  'left-out': -3,
  swapped: -1.8,
  off: -0.5,
  rushed: -0.2,
  stray: -1.5,
  slip: -0.5,
};

/** How far the hardest and the easiest point of a kind lie from the usual one, in logits. */
const spread = 1.2;

const finest = 10_000;

/** The chance, in ten-thousandths, that this goes wrong for this person now. */
export function chanceOf(learner: Learner, kind: MistakeKind, name: string): number {
  const own = Number(hashText(`${kind}/${name}`) % 2001n) / 1000 - 1;
  const { ability, learning, practised } = learner;
  const logit = difficulty[kind] + spread * own - ability - learning * practised;
  return Math.round(finest / (1 + Math.exp(-logit)));
}

/** Whether it goes wrong this time. */
export const errs = (random: Random, learner: Learner, kind: MistakeKind, name: string): boolean =>
  whole(random, 1, finest) <= chanceOf(learner, kind, name);
