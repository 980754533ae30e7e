/**
 * Curves of questions, worked out beside the requests where there are so many answers that others would
 * wait. Where all had the same questions 1,000 persons by 40 take some 0.05 s and 100,000 by 60 some 3 s;
 * where each had a form from a bank of 131, 280 persons take some 0.5 s.
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { abilityReliability } from '#engine/statistics/ability-reliability.ts';
import { expectedAbility } from '#engine/statistics/expected-ability.ts';
import { fitItems } from '#engine/statistics/fit-items.ts';
import type { ConvergedFit, ItemFit } from '#engine/statistics/item-fit.ts';
import type { ItemModel } from '#engine/statistics/item-model.ts';
import type { Responses } from '#engine/statistics/responses.ts';

/** Persons times items; below, it is done within a few hundredths of a second. */
export const mostHere = 5_000;

/** Read as it is written, by its own process thread: it is no part of what the build bundles. */
const file = join(process.cwd(), 'src/server/numbers/fit-worker.ts');

export type FitTask = { readonly responses: Responses; readonly model: ItemModel };

export type Fitted = {
  readonly fit: ItemFit;
  /** Of the abilities that the curves give; undefined where the run stopped short. */
  readonly reliability: number | undefined;
};

/** Undefined where the answers leave too little to fit. */
export async function fitted(task: FitTask): Promise<Fitted | undefined> {
  const { persons, items } = task.responses;
  if (persons * items <= mostHere || !existsSync(file)) return fitHere(task);
  const worker = new Worker(file, { workerData: task });
  try {
    return await new Promise<Fitted | undefined>((resolve, reject) => {
      worker.once('message', resolve);
      worker.once('error', reject);
    });
  } finally {
    await worker.terminate();
  }
}

export function fitHere({ responses, model }: FitTask): Fitted | undefined {
  const fit = fitItems(responses, model);
  if (!fit.ok) return undefined;
  const found = fit.value;
  return {
    fit: found,
    reliability: found.outcome === 'converged' ? reliabilityBy(responses, found) : undefined,
  };
}

function reliabilityBy(
  { persons, items, scores }: Responses,
  { items: estimates }: ConvergedFit,
): number | undefined {
  const columns = estimates.flatMap((item, column) => (item.estimable ? [{ item, column }] : []));
  const curves = columns.map(({ item: { slope, intercept } }) => ({ slope, intercept }));
  const abilities = Array.from({ length: persons }, (_, person) => {
    const row = scores.subarray(person * items, (person + 1) * items);
    return expectedAbility(
      curves,
      columns.map(({ column }) => row[column]!),
    );
  });
  return abilityReliability(abilities);
}
