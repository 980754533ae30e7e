import { one } from '#engine/measure/rational.ts';
import type { Attempt } from './attempt.ts';
import type { DoneAgain } from './deviation.ts';

const wasted = {
  en: 'Doing it again costs time and material, and may disturb what is already right.',
  es: 'Repetirlo cuesta tiempo y material, y puede dañar lo que ya está bien.',
};

/** Steps of the sequence that were played more than once, each time after the first. */
export function doneAgain({ sequence, played }: Attempt): readonly DoneAgain[] {
  return played.flatMap(({ card }, at) => {
    const step = sequence.steps.find(({ id }) => id === card);
    if (!step || played.findIndex((earlier) => earlier.card === card) === at) return [];
    return [
      {
        kind: 'done-again',
        card: step.id,
        at,
        severity: 'minor',
        because: wasted,
        rework: step.rework,
        share: one,
      },
    ];
  });
}
