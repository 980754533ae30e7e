import type { Sequence } from '#engine/method/sequence.ts';
import type { Box, OrderDiagram, Point, Sizes } from '#engine/order-diagram/diagram.ts';
import { layOutOrder } from '#engine/order-diagram/lay-out-order.ts';
import { placeLabels } from '#engine/order-diagram/place-labels.ts';
import type { Spot } from '#engine/tally/spot.ts';
import { say } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';
import type { Heat } from './heat.ts';

/** A box or a line of the drawing, with what it stands for. */
type Drawn = {
  readonly spot: Spot;
  readonly heat: Heat;
  readonly name: string;
  /** In the order in which they are gone through: each step, then the lines that leave it. */
  readonly turn: number;
};

export type DrawnStep = Drawn & { readonly box: Box; readonly place: number; readonly say: string };
export type DrawnLine = Drawn & {
  readonly line: readonly Point[];
  readonly label: Box | undefined;
};

export type DrawnOrder = Pick<OrderDiagram, 'width' | 'height'> & {
  readonly steps: readonly DrawnStep[];
  readonly lines: readonly DrawnLine[];
};

/** Two boxes and the lines beside them fit a phone of 360 pixels. */
export const sizesFor = (width: number): Sizes =>
  width < 640
    ? { width, node: { width: 132, height: 96 }, gap: 11, rowGap: 44, lane: 9 }
    : { width, node: { width: 176, height: 84 }, gap: 22, rowGap: 48, lane: 12 };

export function drawnOrder(
  sequence: Sequence,
  heatAt: (spot: Spot) => Heat,
  width: number,
): DrawnOrder {
  const diagram = layOutOrder(sequence.order, sizesFor(width));
  const words = sequence.steps.map((step) => say(step.say));
  const method = sequence.method.id;
  const idOf = (step: number) => sequence.steps[step]!.id;

  const inReading = diagram.nodes.toSorted((a, b) => a.row - b.row || a.x - b.x);
  const turns = new Map<string, number>();
  for (const { step } of inReading) {
    turns.set(`${step}`, turns.size);
    for (const { before, after } of diagram.edges) {
      if (before === step) turns.set(`${before}-${after}`, turns.size);
    }
  }

  const steps = inReading.map(({ step, ...box }): DrawnStep => {
    const spot: Spot = { method, kind: 'step', step: idOf(step) };
    const heat = heatAt(spot);
    const name = m.order_step({ place: step + 1, step: words[step]!, heat: heat.words });
    return {
      spot,
      heat,
      name,
      turn: turns.get(`${step}`)!,
      box,
      place: step + 1,
      say: words[step]!,
    };
  });

  const lines = diagram.edges.map(({ before, after, line }): DrawnLine => {
    const spot: Spot = { method, kind: 'order', before: idOf(before), after: idOf(after) };
    const heat = heatAt(spot);
    const [first, second] = [words[before]!, words[after]!];
    const name = m.order_line({ before: first, after: second, heat: heat.words });
    return { spot, heat, name, turn: turns.get(`${before}-${after}`)!, line, label: undefined };
  });
  const counted = [...lines.keys()].filter((at) => lines[at]!.heat.count !== '');
  const longest = Math.max(0, ...lines.map(({ heat }) => heat.count.length));
  const label = { width: 8 + 8 * longest, height: 22 };
  const labels = new Map(
    placeLabels(diagram, counted, label).map((box, at) => [counted[at]!, box]),
  );
  return {
    width: diagram.width,
    height: diagram.height,
    steps,
    lines: lines.map((line, at) => ({ ...line, label: labels.get(at) })),
  };
}
