import type { MethodBundle } from '#engine/compile/method-bundle.ts';
import type { Hazard, Source } from '#engine/compile/content.ts';
import type { SourceId } from '#engine/method/method.ts';
import type { Ordered, Sequence, SequenceStep } from '#engine/method/sequence.ts';

/** A step as a row of the job breakdown; steps are counted from 1, as they are printed. */
export type Row = {
  readonly number: number;
  readonly step: SequenceStep;
  /** What must be done before it, and why. */
  readonly after: readonly (Ordered & {
    readonly number: number;
    readonly earlier: SequenceStep;
  })[];
  /** The steps that wait for its drying. */
  readonly waiting: readonly number[];
  readonly cautions: readonly Caution[];
};

/** A hazard of a step; the sheet gives its words in full where it first comes up. */
export type Caution = { readonly hazard: Hazard; readonly first: SequenceStep };

export type Breakdown = {
  readonly rows: readonly Row[];
  /** Published and cited on this sheet, in the order of first mention: the first is note 1. */
  readonly sources: readonly Source[];
};

/** The printed form of a sequence: important steps, key points, reasons, and where each comes from. */
export function breakdown(sequence: Sequence, bundle: MethodBundle): Breakdown {
  const rows = sequence.steps.map((step, place) => ({
    number: place + 1,
    step,
    after: sequence.constraints
      .filter(({ after }) => after === place)
      .flatMap((constraint) => {
        const earlier = sequence.steps[constraint.before];
        return earlier ? [{ ...constraint, number: constraint.before + 1, earlier }] : [];
      }),
    waiting: sequence.constraints
      .filter(({ before }) => step.dries && before === place)
      .map(({ after }) => after + 1),
    cautions: step.hazards.flatMap((id) => {
      const hazard = bundle.hazards.get(id);
      const first = sequence.steps.find(({ hazards }) => hazards.includes(id));
      return hazard && first ? [{ hazard, first }] : [];
    }),
  }));
  const cited = new Set(rows.flatMap((row) => citedBy(row, bundle)));
  const sources = [...cited].flatMap((id) => bundle.sources.get(id) ?? []);
  return { rows, sources: sources.filter(({ publisher }) => publisher !== undefined) };
}

const citedBy = ({ step, cautions }: Row, { dataSheet }: MethodBundle): readonly SourceId[] => [
  step.source,
  ...step.asks.map(({ sheetNumber }) => sheetNumber.source),
  ...[step.dries?.number, step.dries?.dewMargin].flatMap((number) => {
    const source = number && dataSheet.numbers.get(number)?.source;
    return source ? [source] : [];
  }),
  ...cautions.map(({ hazard }) => hazard.source),
];

/** The number of a source's note on the sheet, or undefined for what nobody published. */
export function noteNumber(sources: readonly Source[], id: SourceId): number | undefined {
  const place = sources.findIndex((source) => source.id === id);
  return place < 0 ? undefined : place + 1;
}
