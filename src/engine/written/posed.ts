/**
 * A question as it is put to somebody, apart from what is right about it. What is posed is made of the
 * texts alone: choices are first put in the order of their keys, which only their texts decide, and then
 * shuffled by the seed, so that the same texts look the same whichever of them are right. The wall of a
 * fault is what was done on it: who reads it as data learns no more than who looks at it drawn, but
 * with less work; an exam sends the drawing instead.
 */
import { type FaultKind, faultKinds, zonesOn } from '#engine/inspection/fault.ts';
import type { AttemptFile } from '#engine/marking/attempt-file.ts';
import type { Shelf } from '#engine/marking/attempt-from.ts';
import type { Zone } from '#engine/method/drawing.ts';
import { randomFrom, shuffle } from '#engine/random.ts';
import type { Text } from '#engine/text.ts';
import { choiceKey, questionKey, type ChoiceKey, type QuestionKey } from './choice-key.ts';
import { type Fitted, fitted } from './fitted.ts';
import { hiddenWall } from './hidden-wall.ts';
import { inEach } from './number-words.ts';
import type { Question } from './question.ts';
import { unitNamed } from './read-number.ts';
import { wallFile } from './wall-file.ts';

/** What a candidate sees: no id, no key, no reason. */
export type Posed = { readonly question: QuestionKey; readonly ask: Text } & (
  | {
      readonly kind: 'choose-one' | 'choose-all' | 'order';
      readonly choices: readonly PosedChoice[];
    }
  | { readonly kind: 'number'; readonly unit: string; readonly unitLabel: Text }
  | { readonly kind: 'find-fault'; readonly wall: PosedWall }
);

export type PosedChoice = { readonly key: ChoiceKey; readonly say: Text };

export type PosedWall = AttemptFile & {
  /** Everywhere that can be pointed at, and every kind of fault there is: the same on every such wall. */
  readonly zones: readonly Zone[];
  readonly kinds: readonly FaultKind[];
};

/** Undefined where the question cannot be asked on this shelf. */
export function posed(question: Question, seed: number | string, shelf: Shelf): Posed | undefined {
  const asked = fitted(question, shelf);
  if (!asked) return undefined;
  const common = { question: questionKey(asked.id), ask: asked.ask };
  switch (asked.kind) {
    case 'number': {
      const { label } = unitNamed(asked.unit);
      const unitLabel = inEach((language) => label[language][1]);
      return { ...common, kind: asked.kind, unit: asked.unit, unitLabel };
    }
    case 'find-fault': {
      const wall = hiddenWall(asked, shelf);
      if (!wall) return undefined;
      const zones = zonesOn(wall.attempt.sequence);
      const kinds = faultKinds;
      return { ...common, kind: asked.kind, wall: { ...wallFile(wall.attempt), zones, kinds } };
    }
    default:
      return { ...common, kind: asked.kind, choices: shuffled(asked, seed) };
  }
}

type WithChoices = Extract<Fitted, { readonly kind: 'choose-one' | 'choose-all' | 'order' }>;

function shuffled(question: WithChoices, seed: number | string): readonly PosedChoice[] {
  const choices = textsOf(question)
    .map((say): PosedChoice => ({ key: choiceKey(question.id, say), say }))
    .toSorted((a, b) => (a.key < b.key ? -1 : 1));
  return shuffle(randomFrom(`${seed}/choices/${question.id}`), choices);
}

function textsOf(question: WithChoices): readonly Text[] {
  if (question.kind === 'order') return question.steps;
  const right = question.kind === 'choose-one' ? [question.right] : question.right;
  return [...right, ...question.wrong.map(({ say }) => say)];
}
