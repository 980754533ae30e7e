import type { Pair } from '#engine/method/partial-order.ts';

/**
 * Everything that stands in a row, by number: first the steps, then the passes, one for each row that a
 * line runs through on its way. So every link leads from one row to the next.
 */
export type Grid = {
  readonly steps: number;
  readonly rows: readonly (readonly number[])[];
  /** Each item's links into the row above it, and into the row below. */
  readonly above: readonly (readonly number[])[];
  readonly below: readonly (readonly number[])[];
  /** By pair: its first step, its passes from top to bottom, its second step. */
  readonly routes: readonly (readonly number[])[];
};

export const isPass = ({ steps }: Pick<Grid, 'steps'>, item: number): boolean => item >= steps;

export function gridOf(stepRows: readonly (readonly number[])[], pairs: readonly Pair[]): Grid {
  const rowOf = new Map(stepRows.flatMap((row, at) => row.map((step) => [step, at] as const)));
  const rows = stepRows.map((row) => [...row]);
  const steps = rowOf.size;
  let items = steps;
  const routes = pairs.map(([first, second]) => {
    const passes: number[] = [];
    for (let row = rowOf.get(first)! + 1; row < rowOf.get(second)!; row += 1) {
      rows[row]!.push(items);
      passes.push(items);
      items += 1;
    }
    return [first, ...passes, second];
  });
  const above = Array.from({ length: items }, (): number[] => []);
  const below = Array.from({ length: items }, (): number[] => []);
  for (const route of routes) {
    for (const [at, item] of route.slice(1).entries()) {
      above[item]!.push(route[at]!);
      below[route[at]!]!.push(item);
    }
  }
  return { steps, rows, above, below, routes };
}
