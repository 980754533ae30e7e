import type { FaultKind } from '#engine/inspection/fault.ts';
import type { Shelf } from '#engine/marking/attempt-from.ts';
import type { Zone } from '#engine/method/drawing.ts';
import type { Text } from '#engine/text.ts';
import { choiceKey, type ChoiceKey } from './choice-key.ts';
import { fitted } from './fitted.ts';
import { hiddenWall } from './hidden-wall.ts';
import { numberRule } from './number-rule.ts';
import type { Question, QuestionId, WrongChoice } from './question.ts';
import { ruleText } from './rule-text.ts';

/** What is right about a question, and why the rest is wrong: never sent before it is answered. */
export type Key = {
  readonly id: QuestionId;
  readonly point: Text;
  readonly reasons: readonly Reason[];
} & (
  | { readonly kind: 'choose-one'; readonly right: ChoiceKey }
  | { readonly kind: 'choose-all'; readonly right: readonly ChoiceKey[] }
  | { readonly kind: 'order'; readonly right: readonly ChoiceKey[] }
  | { readonly kind: 'number'; readonly right: Text }
  | {
      readonly kind: 'find-fault';
      readonly zones: readonly Zone[];
      readonly fault: FaultKind;
      readonly cards: readonly string[];
    }
);

/** Of a wrong choice by its key, of anything else as a whole. */
export type Reason = { readonly choice?: ChoiceKey; readonly because: Text };

/** Undefined where the question cannot be asked on this shelf. */
export function keyTo(question: Question, shelf: Shelf): Key | undefined {
  const asked = fitted(question, shelf);
  if (!asked) return undefined;
  const { id, point } = asked;
  const name = (say: Text): ChoiceKey => choiceKey(id, say);
  const reasonsOf = (wrong: readonly WrongChoice[]): readonly Reason[] =>
    wrong.map(({ say, because }) => ({ choice: name(say), because }));
  switch (asked.kind) {
    case 'choose-one': {
      const { kind, right, wrong } = asked;
      return { id, kind, point, right: name(right), reasons: reasonsOf(wrong) };
    }
    case 'choose-all': {
      const { kind, right, wrong } = asked;
      return { id, kind, point, right: right.map(name), reasons: reasonsOf(wrong) };
    }
    case 'order': {
      const { kind, steps, because } = asked;
      return { id, kind, point, right: steps.map(name), reasons: [{ because }] };
    }
    case 'number': {
      const asks = numberRule(asked, shelf);
      const reasons = asked.slips.map(({ because }) => ({ because }));
      return asks && { id, kind: asked.kind, point, right: ruleText(asks.rule), reasons };
    }
    case 'find-fault': {
      const fault = hiddenWall(asked, shelf)?.faults[0];
      if (!fault) return undefined;
      const { zones, cards, kind } = fault;
      const reasons = [{ because: asked.because }];
      return { id, kind: asked.kind, point, reasons, zones, cards, fault: kind };
    }
  }
}
