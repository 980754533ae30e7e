/**
 * A partial order laid out from top to bottom: its transitive reduction, in layers broken into rows that
 * fit the width, with few crossings, and lines that pass beside the boxes, never through them. The same
 * order and sizes give the same drawing. Costs what its parts do, mostly O(sweeps x links^2 of a row).
 *
 * The stages are those of K. Sugiyama, S. Tagawa, M. Toda, "Methods for visual understanding of
 * hierarchical system structures", IEEE Transactions on Systems, Man, and Cybernetics 11(2), 1981.
 */
import { covers, type Pair, type PartialOrder } from '#engine/method/partial-order.ts';
import type { DiagramNode, OrderDiagram, Point, Sizes } from './diagram.ts';
import { type Grid, gridOf, isPass } from './grid.ts';
import { layersOf, rowsOf } from './layers.ts';
import { middlesOf, widthNeeded } from './middles.ts';
import { uncrossed } from './uncross.ts';

export function layOutOrder(order: PartialOrder, sizes: Sizes): OrderDiagram {
  const pairs = covers(order);
  const grid = fittingGrid(order, pairs, sizes);
  const width = Math.max(sizes.width, widthNeeded(grid, sizes));
  const { node, rowGap, lane } = sizes;
  const placed = middlesOf(grid, sizes, width);
  const half = (item: number): number => (isPass(grid, item) ? 0 : node.width / 2) + lane / 2;
  const left = placed.reduce((least, middle, item) => Math.min(least, middle - half(item)), width);
  const middles = placed.map((middle) => middle - left);
  const top = (row: number): number => row * (node.height + rowGap);
  const nodes = grid.rows
    .flatMap((items, row) =>
      items
        .filter((item) => !isPass(grid, item))
        .map((step): DiagramNode => ({
          step,
          row,
          x: round(middles[step]! - node.width / 2),
          y: top(row),
          ...node,
        })),
    )
    .sort((a, b) => a.step - b.step);

  const leaves = portsOf(
    pairs.map(([first], at) => [first, grid.routes[at]![1]!]),
    middles,
    node,
  );
  const enters = portsOf(
    pairs.map(([, last], at) => [last, grid.routes[at]!.at(-2)!]),
    middles,
    node,
  );
  const edges = pairs.map(([before, after], at) => {
    const { row } = nodes[before]!;
    const passes = grid.routes[at]!.slice(1, -1).flatMap((item, passed): readonly Point[] => {
      const y = top(row + 1 + passed);
      return [
        [round(middles[item]!), y],
        [round(middles[item]!), y + node.height],
      ];
    });
    const line: readonly Point[] = [
      [leaves[at]!, nodes[before]!.y + node.height],
      ...passes,
      [enters[at]!, nodes[after]!.y],
    ];
    return { before, after, line };
  });
  const rows = grid.rows.length;
  return {
    width: Math.ceil(middles.reduce((most, at, item) => Math.max(most, at + half(item)), 0)),
    height: rows === 0 ? 0 : top(rows - 1) + node.height,
    nodes,
    edges,
  };
}

/** As many boxes side by side as fit the width together with the lines that pass them; at least one. */
function fittingGrid(order: PartialOrder, pairs: readonly Pair[], sizes: Sizes): Grid {
  const layers = layersOf(order, pairs);
  const most = Math.max(1, Math.floor((sizes.width + sizes.gap) / (sizes.node.width + sizes.gap)));
  for (let inRow = most; ; inRow -= 1) {
    const grid = gridOf(rowsOf(layers, pairs, inRow), pairs);
    if (inRow === 1 || widthNeeded(grid, sizes) <= sizes.width) return uncrossed(grid);
  }
}

/** Where each line meets its box: side by side, in the order of where they go, so that none cross there. */
function portsOf(
  ends: readonly (readonly [step: number, towards: number])[],
  middles: readonly number[],
  { width }: Sizes['node'],
): readonly number[] {
  const ports = Array<number>(ends.length);
  const atStep = Map.groupBy(ends.keys(), (at) => ends[at]![0]);
  for (const [step, lines] of atStep) {
    const sorted = lines.toSorted((a, b) => middles[ends[a]![1]]! - middles[ends[b]![1]]! || a - b);
    const apart = Math.min(16, (width * 0.8) / Math.max(1, lines.length));
    for (const [place, at] of sorted.entries()) {
      ports[at] = round(middles[step]! + (place - (lines.length - 1) / 2) * apart);
    }
  }
  return ports;
}

/** To a tenth of a pixel: shorter to write, and finer than anybody sees. */
const round = (value: number): number => Math.round(value * 10) / 10;
