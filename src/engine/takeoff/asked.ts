/** A problem as whoever is examined by it gets to see it: what is stated and asked, and no way to the answer. */
import type { Text } from '#engine/text.ts';
import type { PartId, Picture } from './family.ts';
import type { Term } from './formula.ts';
import type { Instance } from './instance.ts';
import { problemOf, type Problem } from './problem.ts';
import type { Writable } from './read-answer.ts';

/** `answer` and `term` say how an answer is written; the rounding stands in the words alone. */
export type AskedPart = Writable & {
  readonly part: PartId;
  readonly name: Text;
  readonly ask: Text;
};

export type AskedProblem = {
  readonly stated: Omit<Problem, 'asks'>;
  readonly parts: readonly AskedPart[];
};

export function askedOf(instance: Instance): AskedProblem {
  const { asks, ...stated } = problemOf(instance);
  const { family } = instance.takeoff;
  return {
    stated: {
      ...stated,
      pictures: stated.pictures.filter((_, place) => !tellsAnswer(family.pictures[place]!)),
    },
    parts: instance.parts.map(({ part: { id, name, answer, term } }, place) => ({
      part: id,
      name,
      ask: asks[place]!.ask,
      answer: answer.kind === 'quantity' ? { ...answer, round: undefined } : answer,
      term: { kind: term.kind },
    })),
  };
}

/** Whether something that the picture measures is worked out from an answer. */
const tellsAnswer = ({ shows }: Picture): boolean => [...shows.values()].some(isFromAnswer);

const isFromAnswer = (term: Term): boolean =>
  'args' in term ? term.args.some(isFromAnswer) : term.op === 'part';
