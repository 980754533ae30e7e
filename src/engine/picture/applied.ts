import type { Drawn } from '#engine/method/drawing.ts';
import type { Step } from '#engine/method/method.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import type { Severity } from '#engine/severity.ts';
import type { Text } from '#engine/text.ts';
import type { Placed, Work } from './work.ts';

/** A layer that a card put on, or that a step of this wall will. */
export type Planned = Drawn & {
  readonly card: string;
  readonly placed?: Placed | undefined;
};

/** One layer that a card put on the wall, or would have put there. */
export type Applied = Planned & {
  readonly part: string;
  readonly say: Text;
  /** Place among the cards; after them all what was left out. */
  readonly at: number;
  readonly fault: Severity | undefined;
};

type Card = Pick<Step, 'id' | 'say' | 'draws'>;

export const partOf = (card: string, layer: string): string => `${card}:${layer}`;

/** In the order in which the cards were placed: what comes later lies on what was there. */
export function appliedBy(sequence: Sequence, work: Work): readonly Applied[] {
  const faults = new Map(work.faults.map(({ card, severity }) => [card, severity]));
  return work.placed.flatMap((placed, at) => {
    const card = cardOf(sequence, placed.card);
    return card ? layersOf(card, at, placed, faults.get(placed.card)) : [];
  });
}

/** What the faults say was left out, as it should have been. */
export function missingFrom(sequence: Sequence, work: Work): readonly Applied[] {
  const placed = new Set(work.placed.map(({ card }) => card));
  return work.faults
    .filter(({ card }) => !placed.has(card))
    .flatMap(({ card, severity }) => {
      const found = cardOf(sequence, card);
      return found ? layersOf(found, work.placed.length, undefined, severity) : [];
    });
}

/** The card of this wall, or of another that was played here all the same. */
export function cardOf({ method }: Sequence, id: string): Card | undefined {
  return method.steps.find((step) => step.id === id) ?? decoyCard(method.decoys, id);
}

function decoyCard(decoys: Sequence['method']['decoys'], id: string): Card | undefined {
  const decoy = decoys.find((each) => each.id === id);
  return decoy && { ...decoy, id: decoy.id as never, draws: [] };
}

const layersOf = (
  card: Card,
  at: number,
  placed: Placed | undefined,
  fault: Severity | undefined,
): readonly Applied[] =>
  card.draws.map((drawn) => ({
    ...drawn,
    part: partOf(card.id, drawn.layer),
    card: card.id,
    say: card.say,
    at,
    placed,
    fault,
  }));
