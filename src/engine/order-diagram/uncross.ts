/**
 * Fewer crossings: each row in turn is sorted by the middle of what it is linked to in the row above
 * (going down) or below (going up), over and over; the best arrangement met is kept. A heuristic: the
 * fewest crossings are NP-hard to find. O(sweeps x (items log items + links^2 of a row)).
 *
 * The barycentre method of K. Sugiyama, S. Tagawa, M. Toda, "Methods for visual understanding of
 * hierarchical system structures", IEEE Transactions on Systems, Man, and Cybernetics 11(2), 1981.
 */
import type { Grid } from './grid.ts';
import { mean } from './layers.ts';

type Rows = Grid['rows'];

const sweeps = 24;

export function uncrossed(grid: Grid): Grid {
  let rows = grid.rows;
  let best = { rows, crossings: crossingsOf(grid, rows) };
  for (let sweep = 0; sweep < sweeps && best.crossings > 0; sweep += 1) {
    rows =
      sweep % 2 === 0 ? swept(rows, grid.above) : swept(rows.toReversed(), grid.below).toReversed();
    const crossings = crossingsOf(grid, rows);
    if (crossings < best.crossings) best = { rows, crossings };
  }
  return { ...grid, rows: best.rows };
}

/** Every row after the first, by where its links in the row before it lie. */
function swept(rows: Rows, links: Grid['above']): Rows {
  let before = new Map<number, number>();
  return rows.map((row) => {
    const own = placesIn(row);
    const lean = (item: number): number =>
      mean(links[item]!.map((other) => before.get(other)!)) ?? own.get(item)!;
    const sorted = row.toSorted((a, b) => lean(a) - lean(b));
    before = placesIn(sorted);
    return sorted;
  });
}

/** From 0, the left end of the row, to 1, its right end. */
const placesIn = (row: readonly number[]): Map<number, number> =>
  new Map(row.map((item, at) => [item, (at + 0.5) / row.length]));

export const crossingsOf = ({ below }: Pick<Grid, 'below'>, rows: Rows): number =>
  rows.slice(0, -1).reduce((sum, row, at) => {
    const places = new Map(rows[at + 1]!.map((item, place) => [item, place]));
    const links = row.map((item) => below[item]!.map((other) => places.get(other)!));
    return sum + crossingsBetween(links);
  }, 0);

/** Links of each item of a row to places in the next, from left to right. */
function crossingsBetween(links: readonly (readonly number[])[]): number {
  let crossings = 0;
  const earlier: number[] = [];
  for (const ends of links) {
    for (const end of ends) crossings += earlier.filter((other) => other > end).length;
    earlier.push(...ends);
  }
  return crossings;
}
