/** Numbers of questions as the server tells them, made by the engine from answers that are written out here. */
import type { ItemEstimate } from '#engine/statistics/item-fit.ts';
import { verdictsWith } from '#engine/statistics/item-verdict.ts';
import type { Stratum } from '#engine/statistics/mantel-haenszel.ts';
import type { QuestionNumbers } from '#ui/numbers/number-view.ts';

/** How many got the first question right and wrong, and for each of these, how many of the other two. */
export function verdictOf(
  rows: readonly (readonly [count: number, answers: string])[],
  strata?: readonly Stratum[],
) {
  const people = rows.flatMap(([count, answers]) => Array.from({ length: count }, () => answers));
  const items = people[0]!.length;
  const scores = Uint8Array.from(people.flatMap((answers) => [...answers].map(Number)));
  const own = strata && Array.from({ length: items }, (_, item) => (item === 0 ? strata : []));
  return verdictsWith({ persons: people.length, items, scores }, own)[0]!;
}

export const estimate: ItemEstimate = {
  item: 0,
  answers: 120,
  estimable: true,
  slope: 1.1,
  slopeError: 0.14,
  intercept: 0.55,
  interceptError: 0.21,
  difficulty: -0.5,
  difficultyError: 0.19,
};

/** A sound question: those who know more get it right more often. */
export const sound = verdictOf([
  [60, '111'],
  [20, '100'],
  [15, '011'],
  [25, '000'],
]);

/** One whose key is wrong: it is got right by those who get the others wrong. */
export const turnedRound = verdictOf([
  [60, '011'],
  [20, '111'],
  [40, '100'],
  [10, '000'],
]);

/** As able, people get it right in English and wrong in Spanish. */
export const harderInSpanish = verdictOf(
  [
    [60, '111'],
    [20, '100'],
    [15, '011'],
    [25, '000'],
  ],
  [{ referenceRight: 70, referenceWrong: 20, focalRight: 30, focalWrong: 60 }],
);

export const questionWith = (changes: Partial<QuestionNumbers>): QuestionNumbers => ({
  id: 'turn-up',
  ask: { en: 'How far does it turn up?', es: '¿Cuánto sube?' },
  topic: { en: 'Base of wall', es: 'Base del muro' },
  isRetired: false,
  open: 2,
  verdict: sound,
  curve: { enough: true, value: { outcome: 'converged', cycles: 17, estimate } },
  ownCurve: { enough: false, have: 120, need: 250 },
  ...changes,
});
