/** A problem and its marks in plain values, for the command line and for files. */
import { encodeQuantity, type EncodedQuantity } from '#engine/measure/encode-quantity.ts';
import type { Text } from '#engine/text.ts';
import type { Chart } from './chart.ts';
import { choicesOf } from './choices.ts';
import type { FamilyId, PartId } from './family.ts';
import { inEach } from './fill-text.ts';
import type { Amount, Instance, Solved } from './instance.ts';
import type { Mark } from './marks.ts';
import { filledText, problemOf, writeAnswer, type Stated } from './problem.ts';
import { echo } from './read-answer.ts';
import type { VerdictKind } from './verdict.ts';
import type { WorkedLine } from './worked-line.ts';
import { workedSolution } from './worked.ts';

export type ProblemReport = {
  readonly family: FamilyId;
  readonly seed: string;
  readonly title: Text;
  readonly intro: Text;
  readonly givens: readonly Stated<string>[];
  readonly numbers: readonly Stated<string>[];
  readonly charts: readonly Chart[];
  readonly pictures: readonly {
    readonly kind: string;
    readonly measures: Readonly<Record<string, EncodedAmount>>;
  }[];
  readonly parts: readonly PartReport[];
};

type EncodedAmount = EncodedQuantity | boolean;

type PartReport = {
  readonly part: PartId;
  readonly ask: Text;
  readonly answer: Text;
  /** Exactly, in base units. */
  readonly value: EncodedAmount;
  readonly exact: EncodedAmount;
  readonly slips: readonly {
    readonly slip: string;
    readonly answer: Text;
    readonly value: EncodedAmount;
    readonly tell: Text;
  }[];
  readonly worked: readonly WorkedLine[];
  readonly choices: readonly { readonly text: Text; readonly right: boolean }[];
};

export function reportOf(instance: Instance, seed: string): ProblemReport {
  const problem = problemOf(instance);
  return {
    family: instance.takeoff.family.id,
    seed,
    title: problem.title,
    intro: problem.intro,
    givens: problem.givens,
    numbers: problem.numbers,
    charts: problem.charts,
    pictures: problem.pictures.map(({ kind, measures }) => ({
      kind,
      measures: Object.fromEntries(
        [...measures].map(([measure, value]) => [measure, encode(value)]),
      ),
    })),
    parts: instance.parts.map((solved, place) =>
      partReport(instance, solved, problem.asks[place]!.ask, seed),
    ),
  };
}

function partReport(instance: Instance, solved: Solved, ask: Text, seed: string): PartReport {
  const { part, right, exact, slips } = solved;
  const text = (value: Amount): Text =>
    inEach((language) => writeAnswer(part.answer, value, language));
  return {
    part: part.id,
    ask,
    answer: text(right),
    value: encode(right),
    exact: encode(exact),
    slips: slips.map(({ slip, answer }) => ({
      slip: slip.id,
      answer: text(answer),
      value: encode(answer),
      tell: filledText(instance, slip.tell),
    })),
    worked: workedSolution(instance, part.id),
    choices: choicesOf(instance, part.id, seed).map(({ text, isRight }) => ({
      text,
      right: isRight,
    })),
  };
}

const encode = (value: Amount): EncodedAmount =>
  typeof value === 'boolean' ? value : encodeQuantity(value);

export type MarkReport = {
  readonly part: PartId;
  readonly read: Text | null;
  readonly fault: Text | null;
  readonly verdict: VerdictKind | null;
  readonly followed: boolean;
  readonly slips: readonly string[];
  readonly say: Text | null;
  readonly credit: number;
};

export const markReportOf = ({ part, solved, reading, verdict, credit }: Mark): MarkReport => ({
  part,
  read: reading?.ok ? echo(solved.part, reading.value) : null,
  fault: reading?.ok === false ? reading.error.message : null,
  verdict: verdict?.kind ?? null,
  followed: verdict?.followed ?? false,
  slips: verdict?.slips.map(({ id }) => id) ?? [],
  say: verdict?.say ?? null,
  credit,
});
