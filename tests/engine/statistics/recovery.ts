/** How near fits of made-up answers come to the curves that the answers were made from. */
import { randomFrom } from '#engine/random.ts';
import { fitItems } from '#engine/statistics/fit-items.ts';
import type { ItemCurve } from '#engine/statistics/item-curve.ts';
import type { ItemModel } from '#engine/statistics/item-model.ts';
import type { Responses } from '#engine/statistics/responses.ts';
import { drawAbilities, simulateResponses } from '#engine/statistics/simulate-responses.ts';

/** `said` is the root of the mean square of the standard errors given: what `rmse` should come to. */
export type Recovery = {
  readonly bias: number;
  readonly rmse: number;
  readonly said: number;
  /** Share of 95 % intervals that hold the truth. */
  readonly covered: number;
};

/** Slopes from 0.6 to 1.8 and difficulties from -2 to 2, mixed. */
export const plausibleCurves = (items: number): readonly ItemCurve[] =>
  Array.from({ length: items }, (_, item) => {
    const slope = 0.6 + (1.2 * ((item * 7) % items)) / items;
    return { slope, intercept: -slope * (-2 + (4 * item) / (items - 1)) };
  });

/** Over so many runs, each of its own seed; `thin` may take answers away. */
export function recover(
  model: ItemModel,
  {
    persons,
    items,
    runs,
    seed,
  }: Readonly<Record<'persons' | 'items' | 'runs', number>> & { readonly seed: string },
  thin: (responses: Responses) => Responses = (responses) => responses,
) {
  const curves = plausibleCurves(items).map(({ slope, intercept }) =>
    model === 'slope-each' ? { slope, intercept } : { slope: 1, intercept },
  );
  const misses = { slope: [] as Miss[], intercept: [] as Miss[] };
  let stopped = 0;
  for (let run = 0; run < runs; run += 1) {
    const random = randomFrom(`${seed}/${run}`);
    const responses = simulateResponses(random, curves, drawAbilities(random, persons));
    const fit = fitItems(thin(responses), model);
    if (!fit.ok || fit.value.outcome !== 'converged') {
      stopped += 1;
      continue;
    }
    for (const found of fit.value.items) {
      if (!found.estimable) continue;
      const { slope, intercept } = curves[found.item]!;
      misses.slope.push({ by: found.slope - slope, error: found.slopeError ?? 0 });
      misses.intercept.push({ by: found.intercept - intercept, error: found.interceptError });
    }
  }
  return { stopped, slope: told(misses.slope), intercept: told(misses.intercept) };
}

type Miss = { readonly by: number; readonly error: number };

function told(misses: readonly Miss[]): Recovery {
  const mean = (of: (miss: Miss) => number): number =>
    misses.reduce((sum, miss) => sum + of(miss), 0) / misses.length;
  return {
    bias: mean(({ by }) => by),
    rmse: Math.sqrt(mean(({ by }) => by * by)),
    said: Math.sqrt(mean(({ error }) => error * error)),
    covered: mean(({ by, error }) => (Math.abs(by) <= 1.96 * error ? 1 : 0)),
  };
}
