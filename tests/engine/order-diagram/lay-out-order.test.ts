import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { partialOrder, type PartialOrder } from '#engine/method/partial-order.ts';
import {
  type Box,
  type DiagramEdge,
  type OrderDiagram,
  type Sizes,
} from '#engine/order-diagram/diagram.ts';
import { layOutOrder } from '#engine/order-diagram/lay-out-order.ts';
import { placeLabels } from '#engine/order-diagram/place-labels.ts';
import { antichain, anyOrder, chain, orderOf, times } from '../method/orders.ts';
import { walls } from '../../content/walls.ts';

const phone: Sizes = {
  width: 340,
  node: { width: 136, height: 76 },
  gap: 12,
  rowGap: 36,
  lane: 9,
};
const desk: Sizes = {
  width: 1000,
  node: { width: 170, height: 64 },
  gap: 20,
  rowGap: 40,
  lane: 12,
};

const doBoxesOverlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** What is wrong with a drawing of an order; nothing where it is right. */
function complaints(order: PartialOrder, sizes: Sizes, diagram: OrderDiagram): readonly string[] {
  const { nodes, edges, width, height } = diagram;
  const stated = partialOrder(
    order.size,
    edges.map(({ before, after }) => [before, after] as const),
  );
  return [
    ...(stated.ok && JSON.stringify(stated.value) === JSON.stringify(order)
      ? []
      : ['another order']),
    ...nodes.flatMap((node, at) => [
      ...(node.step === at ? [] : [`${at} is not in its place`]),
      ...(node.x >= 0 && node.x + node.width <= width && node.y + node.height <= height
        ? []
        : [`${at} is cut off`]),
      ...nodes
        .slice(at + 1)
        .filter((other) => doBoxesOverlap(node, other))
        .map((other) => `${at} overlaps ${other.step}`),
    ]),
    ...edges.flatMap((edge) => edgeComplaints(edge, diagram)),
  ];
}

function edgeComplaints({ before, after, line }: DiagramEdge, { nodes, width }: OrderDiagram) {
  const name = `${before}-${after}`;
  const [from, to] = [nodes[before]!, nodes[after]!];
  const [first, last] = [line[0]!, line.at(-1)!];
  const isOn = ([x]: readonly [number, number], node: typeof from) =>
    x > node.x && x < node.x + node.width;
  const starts = first[1] === from.y + from.height && isOn(first, from);
  const ends = last[1] === to.y && isOn(last, to);
  const crossed = nodes.filter((node) =>
    line.slice(1).some(([x1, y1], at) => {
      const [x0, y0] = line[at]!;
      const isBeside = Math.max(x0, x1) <= node.x || Math.min(x0, x1) >= node.x + node.width;
      return y0 < node.y + node.height && y1 > node.y && !isBeside;
    }),
  );
  return [
    ...(starts && ends ? [] : [`${name} does not join its boxes`]),
    ...(line.slice(1).every(([, y], at) => y > line[at]![1]) ? [] : [`${name} does not run down`]),
    ...(line.every(([x]) => x >= 0 && x <= width) ? [] : [`${name} is cut off`]),
    ...crossed.map(({ step }) => `${name} runs through ${step}`),
  ];
}

describe('truth', () => {
  test('a chain stands in one column, with straight lines', () => {
    const { nodes, edges } = layOutOrder(orderOf(chain(5)), desk);
    expect(new Set(nodes.map(({ x }) => x)).size).toBe(1);
    expect(nodes.map(({ row }) => row)).toEqual([0, 1, 2, 3, 4]);
    expect(edges.every(({ line }) => line.length === 2 && line[0]![0] === line[1]![0])).toBe(true);
  });

  test('what is bound to nothing is broken into even rows as wide as there is room', () => {
    const rowSizes = (size: number, sizes: Sizes) => {
      const { nodes } = layOutOrder(orderOf(antichain(size)), sizes);
      return [...Map.groupBy(nodes, ({ row }) => row).values()].map(({ length }) => length);
    };
    expect(rowSizes(5, desk)).toEqual([5]);
    expect(rowSizes(6, desk)).toEqual([3, 3]);
    expect(rowSizes(5, phone)).toEqual([2, 1, 2]);
  });

  test('two chains beside each other do not cross, however they are numbered', () => {
    const order = orderOf({
      size: 6,
      pairs: [
        [5, 1],
        [1, 2],
        [0, 4],
        [4, 3],
      ],
    });
    const { nodes } = layOutOrder(order, desk);
    const x = (step: number) => nodes[step]!.x;
    expect(Math.sign(x(5) - x(0))).toBe(Math.sign(x(1) - x(4)));
    expect(Math.sign(x(1) - x(4))).toBe(Math.sign(x(2) - x(3)));
    expect(x(5)).toBe(x(2));
  });

  test('a line that passes a row keeps clear of what stands there', () => {
    const order = orderOf({
      size: 4,
      pairs: [
        [0, 1],
        [1, 3],
        [0, 2],
        [2, 3],
        [0, 3],
      ],
    });
    expect(layOutOrder(order, desk).edges).toHaveLength(4);
    const long = orderOf({
      size: 5,
      pairs: [
        [0, 1],
        [1, 2],
        [2, 3],
        [0, 4],
        [4, 3],
      ],
    });
    const { edges } = layOutOrder(long, desk);
    const passing = edges.filter(({ line }) => line.length > 2);
    expect(passing).toHaveLength(1);
    expect(passing[0]!.line).toHaveLength(4);
  });

  test('of no steps there is nothing to draw', () => {
    expect(layOutOrder(orderOf(antichain(0)), phone)).toMatchObject({
      height: 0,
      nodes: [],
      edges: [],
    });
  });
});

describe('laws', () => {
  test('any order is drawn whole: the same order, top to bottom, nothing on top of another', () => {
    fc.assert(
      fc.property(anyOrder(12), fc.constantFrom(phone, desk), (stated, sizes) => {
        const order = orderOf(stated);
        expect(complaints(order, sizes, layOutOrder(order, sizes))).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  test('so is a grid of chains, where lines cross wherever they are put', () => {
    const order = orderOf(times(chain(6), chain(5)));
    for (const sizes of [phone, desk]) {
      expect(complaints(order, sizes, layOutOrder(order, sizes))).toEqual([]);
    }
  });

  test.each(walls)(
    'so is every wall, within the width of a phone and of a desk: $name',
    ({ sequence }) => {
      for (const sizes of [phone, desk]) {
        const diagram = layOutOrder(sequence.order, sizes);
        expect(complaints(sequence.order, sizes, diagram)).toEqual([]);
        expect(diagram.width).toBeLessThanOrEqual(sizes.width);
        expect(layOutOrder(structuredClone(sequence.order), sizes)).toEqual(diagram);
      }
    },
  );

  test('with a label on every line of every wall, fewer than 2 in 100 lie on a box or on another', () => {
    const size = { width: 44, height: 22 };
    let all = 0;
    let covered = 0;
    for (const { sequence } of walls) {
      const diagram = layOutOrder(sequence.order, phone);
      const labels = placeLabels(diagram, [...diagram.edges.keys()], size);
      all += labels.length;
      covered += labels.filter((label, at) =>
        [...diagram.nodes, ...labels.slice(0, at)].some((other) => doBoxesOverlap(label, other)),
      ).length;
    }
    expect(covered / all).toBeLessThan(0.02);
  });
});
