/** What comes of a sitting that is over, by the kind of its part. */
import type { Content } from '#engine/compile/content.ts';
import { mockUpResult } from '#engine/exam/mock-up-result.ts';
import type { MockUpPart, Part, SchemeId } from '#engine/exam/scheme.ts';
import { type Mark, type PartResult, partResult } from '#engine/exam/score.ts';
import { approximate } from '#engine/measure/rational.ts';
import { markMockUp, type WallLine } from './mark-mock-up.ts';
import { markOfProblem, markTakeoff, type TakeoffLine } from './mark-takeoff.ts';
import { markOf, markWritten, type WrittenLine } from './mark-written.ts';
import type { Known } from './sitting-log.ts';

/** As it is kept with the result, to be read years later whatever the content says then. */
export type SittingDetail = Summed &
  (
    | { readonly kind: 'written'; readonly lines: readonly WrittenLine[] }
    | { readonly kind: 'takeoff'; readonly lines: readonly TakeoffLine[] }
    | { readonly kind: 'mock-up'; readonly lines: readonly WallLine[] }
  );

type Summed = {
  readonly earned: number;
  readonly possible: number;
  readonly passMark: number;
};

/** For the statistics. */
export type Response = {
  readonly item: string;
  readonly topic: string;
  readonly wasAnswered: boolean;
  readonly isRight: boolean;
};

export type MarkedSitting = {
  readonly outcome: PartResult['outcome'];
  readonly share: number | undefined;
  readonly detail: SittingDetail;
  readonly responses: readonly Response[];
};

/** Undefined where the scheme has no such part any more. */
export function partOf(content: Content, { row }: Known): Part | undefined {
  const scheme = content.schemes.get(row.scheme as SchemeId);
  return scheme?.parts.find(({ id }) => id === row.part);
}

/** Marks it as it stands; changes nothing. Undefined where the scheme has no such part any more. */
export function markSitting(content: Content, known: Known): MarkedSitting | undefined {
  const part = partOf(content, known);
  if (part?.kind !== known.row.kind) return undefined;
  if (part.kind === 'mock-up') return markedMockUp(content, known, part);
  return part.kind === 'takeoff'
    ? markedTakeoff(content, known, part)
    : markedWritten(content, known, part);
}

function markedWritten(content: Content, known: Known, part: Part): MarkedSitting {
  const lines = markWritten(content, known);
  const { sum, ...result } = summed(part, lines, markOf);
  return {
    ...result,
    detail: { kind: 'written', lines, ...sum },
    responses: responsesTo(known, lines, ({ verdict }) => verdict?.outcome === 'right'),
  };
}

function markedTakeoff(content: Content, known: Known, part: Part): MarkedSitting {
  const lines = markTakeoff(content, known);
  const { sum, ...result } = summed(part, lines, markOfProblem);
  return {
    ...result,
    detail: { kind: 'takeoff', lines, ...sum },
    responses: responsesTo(known, lines, ({ credit }) => credit === 1),
  };
}

const whole = 100;

/** The share is that of the wall that came off worst: each has to reach the pass mark by itself. */
function markedMockUp(content: Content, known: Known, part: MockUpPart): MarkedSitting {
  const lines = markMockUp(content, known);
  const built = lines.filter(({ leftOut }) => !leftOut);
  const asked = { ...part, builds: built.length };
  const passed = built.filter((wall) => mockUpResult({ ...part, builds: 1 }, [wall]) === 'passed');
  return {
    outcome: built.length === 0 ? 'nothing-to-count' : mockUpResult(asked, built),
    share: built.length === 0 ? undefined : Math.min(...built.map(({ score }) => score)) / whole,
    detail: {
      kind: 'mock-up',
      lines,
      earned: passed.length,
      possible: built.length,
      passMark: approximate(part.passMark.value),
    },
    responses: responsesTo(known, lines, (line) => passed.includes(line)),
  };
}

type Line = {
  readonly item: string;
  readonly topic: string | undefined;
  readonly leftOut: string | undefined;
};

function summed<L extends Line>(
  { passMark }: Part,
  lines: readonly L[],
  markOf: (line: L) => Mark,
): Pick<MarkedSitting, 'outcome' | 'share'> & { readonly sum: Summed } {
  const leftOut = new Set(lines.filter((line) => line.leftOut).map(({ item }) => item));
  const result = partResult(lines.map(markOf), passMark, leftOut);
  // Credits lie between 0 and 1, and a form has no item twice.
  if (!result.ok) throw new RangeError(JSON.stringify(result.error));
  const { outcome, share, earned, possible } = result.value;
  return {
    outcome,
    share: share && approximate(share),
    sum: {
      earned: approximate(earned),
      possible: approximate(possible),
      passMark: approximate(passMark.value),
    },
  };
}

const responsesTo = <L extends Line>(
  { sitting }: Known,
  lines: readonly L[],
  isRight: (line: L) => boolean,
): readonly Response[] =>
  lines.flatMap((line) => {
    const { item, topic } = line;
    if (topic === undefined) return [];
    return [{ item, topic, wasAnswered: sitting.counts.has(item), isRight: isRight(line) }];
  });
