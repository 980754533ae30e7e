import type { Sizes } from './diagram.ts';
import { type Grid, isPass } from './grid.ts';
import { mean } from './layers.ts';
import { lineUpRow, type Wish } from './line-up-row.ts';

const sweeps = 12;

/** Lines that run straight down are easier to follow than boxes that stand in their middle. */
const passWeight = 4;

/** The room that each item of a row needs from the middle of the one before it. */
function roomsIn(grid: Grid, row: readonly number[], { node, gap, lane }: Sizes) {
  const half = (item: number): number => (isPass(grid, item) ? 0 : node.width / 2);
  const between = (a: number, b: number): number =>
    isPass(grid, a) && isPass(grid, b) ? lane : gap;
  const rooms = row.map((item, at) => {
    const left = row[at - 1];
    return left === undefined
      ? half(item) + lane / 2
      : half(left) + between(left, item) + half(item);
  });
  const last = row.at(-1);
  return { rooms, rest: last === undefined ? 0 : half(last) + lane / 2 };
}

export const widthNeeded = (grid: Grid, sizes: Sizes): number =>
  Math.max(
    0,
    ...grid.rows.map((row) => {
      const { rooms, rest } = roomsIn(grid, row, sizes);
      return rooms.reduce((sum, room) => sum + room, rest);
    }),
  );

/** The x of the middle of every item: drawn to its links above on the way down, below on the way up. */
export function middlesOf(grid: Grid, sizes: Sizes, width: number): readonly number[] {
  const middles = Array<number>(grid.above.length).fill(width / 2);
  const settle = (row: readonly number[], linksOf: (item: number) => readonly number[]): void => {
    const { rooms, rest } = roomsIn(grid, row, sizes);
    const wishes = row.map((item, at): Wish => ({
      at: mean(linksOf(item).map((other) => middles[other]!)) ?? middles[item]!,
      weight: isPass(grid, item) ? passWeight : 1,
      room: rooms[at]!,
    }));
    for (const [at, middle] of lineUpRow(wishes, width, rest).entries()) middles[row[at]!] = middle;
  };
  for (let sweep = 0; sweep < sweeps; sweep += 1) {
    for (const row of grid.rows) settle(row, (item) => grid.above[item]!);
    for (const row of grid.rows.toReversed()) settle(row, (item) => grid.below[item]!);
  }
  for (const row of grid.rows) settle(row, (item) => [...grid.above[item]!, ...grid.below[item]!]);
  return middles;
}
