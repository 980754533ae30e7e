/** What the results of each form of a part say: those with the same questions sat the same form. */
import { type Enough, fewest, ifEnough } from '#engine/statistics/enough.ts';
import { sameForms } from '#engine/statistics/same-forms.ts';
import { testVerdict, type TestVerdict } from '#engine/statistics/test-verdict.ts';
import type { PartAnswers, Sat } from './answers.ts';
import { passShare, type Share } from './pass-share.ts';

export type FormLine = {
  readonly questions: number;
  readonly sat: number;
  /** Questions right on average; one left open is not right. */
  readonly mean: Enough<number>;
  readonly passed: Enough<Share>;
  readonly verdict: TestVerdict;
};

export type Forms = {
  readonly count: number;
  /** Forms that one person sat, and nobody else. */
  readonly alone: number;
  /** Of the others, the one that most sat first. */
  readonly lines: readonly FormLine[];
};

export function formNumbers(
  { responses, sittings, asked }: Pick<PartAnswers, 'responses' | 'sittings' | 'asked'>,
  first: readonly Sat[],
): Forms {
  const satBy = new Map(first.map((sat) => [sat.id, sat]));
  const forms = sameForms(responses, asked);
  const shared = forms.filter(({ persons }) => persons.length > 1);
  return {
    count: forms.length,
    alone: forms.length - shared.length,
    lines: shared.map(({ persons, responses: own }) => ({
      questions: own.items,
      sat: persons.length,
      mean: ifEnough(
        persons.length,
        fewest.proportion,
        () => own.scores.filter((score) => score === 1).length / persons.length,
      ),
      passed: passShare(persons.flatMap((person) => satBy.get(sittings[person]!) ?? [])),
      verdict: testVerdict(own),
    })),
  };
}
