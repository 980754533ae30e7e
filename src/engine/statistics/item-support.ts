import type { NotEstimable } from './item-fit.ts';
import { absent, type Responses } from './responses.ts';

export type ItemSupport = {
  readonly item: number;
  readonly answers: number;
  /** Undefined where the answers can tell of the item. */
  readonly why: NotEstimable | undefined;
};

/** What there is to estimate each item from. O(persons x items). */
export function itemSupport(
  { persons, items, scores }: Responses,
  fewestAnswers: number,
): readonly ItemSupport[] {
  const answers = new Uint32Array(items);
  const rights = new Uint32Array(items);
  for (let person = 0; person < persons; person += 1) {
    for (let item = 0; item < items; item += 1) {
      const score = scores[person * items + item]!;
      if (score === absent) continue;
      answers[item]! += 1;
      rights[item]! += score;
    }
  }
  return [...answers].map((count, item) => ({
    item,
    answers: count,
    why: reason(count, rights[item]!, fewestAnswers),
  }));
}

function reason(answers: number, right: number, fewest: number): NotEstimable | undefined {
  if (answers < fewest) return 'too-few-answers';
  if (right === 0) return 'all-wrong';
  return right === answers ? 'all-right' : undefined;
}
