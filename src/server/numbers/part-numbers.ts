/** What the results of one part say, and how surely: all that its screens show. */
import type { Content } from '#engine/compile/content.ts';
import type { Part, Scheme } from '#engine/exam/scheme.ts';
import { approximate } from '#engine/measure/rational.ts';
import { type Enough, fewest, fewestForCurves, ifEnough } from '#engine/statistics/enough.ts';
import { abilityFor, formAt } from '#engine/statistics/form-precision.ts';
import { commonest, formStrata } from '#engine/statistics/form-strata.ts';
import { errorOfTotals } from '#engine/statistics/error-of-totals.ts';
import type {
  ConvergedFit,
  CurveSaid,
  ItemEstimate,
  NoCurves,
} from '#engine/statistics/item-fit.ts';
import { type ItemVerdict, verdictsWith } from '#engine/statistics/item-verdict.ts';
import type { Db } from '../database/open-database.ts';
import {
  answersTo,
  firstTries,
  type PartAnswers,
  type PartKey,
  type Sat,
  satIn,
} from './answers.ts';
import { type Fitted, fitted } from './fit.ts';
import { formNumbers, type Forms } from './form-numbers.ts';
import { passShare, type Share } from './pass-share.ts';
import { topicCurves } from './topic-curves.ts';

export type GroupShare = {
  readonly kind: 'language' | 'crew';
  /** None: not known. */
  readonly name: string | null;
  readonly sat: number;
  readonly passed: Enough<Share>;
};

export type ItemNumbers = {
  readonly id: string;
  readonly topic: string;
  readonly open: number;
  readonly verdict: ItemVerdict;
  /** Of one shared slope, and of its own. */
  readonly curve: Enough<CurveSaid>;
  readonly ownCurve: Enough<CurveSaid>;
  /** Of one shared slope, however few answered it; undefined where no run settled. */
  readonly estimate: ItemEstimate | undefined;
};

export type Precision = {
  readonly outcome: 'converged';
  /** From 0 to 1: how far results would come out the same on another form. */
  readonly reliability: number;
  /** Of a form of `questions`: somebody just at the pass mark would come out so many questions off. */
  readonly questions: number;
  readonly passMark: number;
  readonly offAtPassMark: number;
  /** In questions, of everybody's result together: the spread of results that is error. */
  readonly errorOfMeasurement: number | undefined;
  /** The ability at the pass mark, and what a form tells at each ability. */
  readonly ability: number;
  readonly curve: readonly { readonly ability: number; readonly information: number }[];
  readonly cycles: number;
};

export type PartNumbers = {
  /** People; each counts by the first try. */
  readonly sat: number;
  readonly tries: number;
  readonly passed: Enough<Share>;
  /** How many came out at each twentieth of the whole, the last with 100 %. */
  readonly bins: readonly number[];
  readonly groups: readonly GroupShare[];
  readonly forms: Forms;
  readonly precision: Enough<Precision | NoCurves>;
  readonly items: readonly ItemNumbers[];
};

const binCount = 20;

export async function partNumbers(db: Db, key: PartKey, part: Part): Promise<PartNumbers> {
  const sat = await satIn(db, key);
  const first = firstTries(sat);
  const bins = new Array<number>(binCount).fill(0);
  for (const { share } of first) {
    if (share !== null) bins[Math.min(binCount - 1, Math.floor(share * binCount + 1e-9))]! += 1;
  }
  const answers = await answersTo(db, key, first);
  return {
    sat: first.length,
    tries: sat.length,
    passed: passShare(first),
    bins,
    groups: [...groupsBy(first, 'language'), ...groupsBy(first, 'crew')],
    forms: formNumbers(answers, first),
    ...(await ofAnswers(answers, first, part)),
  };
}

function groupsBy(first: readonly Sat[], kind: 'language' | 'crew'): readonly GroupShare[] {
  const groups = Map.groupBy(first, (one) => one[kind]);
  return [...groups]
    .map(([name, own]) => ({ kind, name, sat: own.length, passed: passShare(own) }))
    .toSorted((a, b) => b.sat - a.sat);
}

async function ofAnswers(
  answers: PartAnswers,
  first: readonly Sat[],
  part: Part,
): Promise<Pick<PartNumbers, 'precision' | 'items'>> {
  const { responses, sittings, asked } = answers;
  const { persons } = responses;
  const [need, needEach] = [fewestForCurves['slope-common'], fewestForCurves['slope-each']];
  if (persons === 0) return { precision: { enough: false, have: 0, need }, items: [] };
  const languageOf = new Map(first.map(({ id, language }) => [id, language]));
  const groups = sittings.map((id) => {
    const language = languageOf.get(id);
    return language === 'en'
      ? ('reference' as const)
      : language === 'es'
        ? ('focal' as const)
        : undefined;
  });
  const lengths = asked.map(({ length }) => length);
  const verdicts = verdictsWith(responses, formStrata(responses, groups, lengths));
  const isAsked = persons >= needEach && verdicts.some(({ answers: own }) => own >= need);
  const [common, each] = await Promise.all([
    persons >= need ? fitted({ responses, model: 'slope-common' }) : undefined,
    isAsked ? fitted({ responses, model: 'slope-each' }) : undefined,
  ]);
  const items = answers.items.map(({ id, topic, open }, column) => {
    const verdict = verdicts[column]!;
    const had = verdict.answers;
    return {
      id,
      topic,
      open,
      verdict,
      // One slope is shared by all; what is the item's own takes as many answers as a correlation.
      curve: curveOf(common, column, [persons, need], [had, fewest.correlation]),
      ownCurve: curveOf(each, column, [persons, needEach], [had, need]),
      estimate: common?.fit.outcome === 'converged' ? common.fit.items[column] : undefined,
    };
  });
  const precision = ifEnough(persons, need, () =>
    common?.fit.outcome === 'converged'
      ? precisionOf(answers, items, { ...common, fit: common.fit }, part)
      : noCurves(common),
  );
  return { precision, items };
}

type Pair = readonly [have: number, need: number];

function curveOf(
  run: Fitted | undefined,
  column: number,
  [persons, needed]: Pair,
  [answers, neededAnswers]: Pair,
): Enough<CurveSaid> {
  if (persons < needed) return { enough: false, have: persons, need: needed };
  return ifEnough(answers, neededAnswers, () =>
    run?.fit.outcome === 'converged'
      ? { outcome: 'converged', cycles: run.fit.cycles, estimate: run.fit.items[column]! }
      : noCurves(run),
  );
}

function noCurves(run: Fitted | undefined): NoCurves {
  if (run?.fit.outcome !== 'not-converged') return { outcome: 'nothing-to-fit' };
  const { outcome, reason, cycles } = run.fit;
  return { outcome, reason, cycles };
}

function precisionOf(
  answers: PartAnswers,
  items: readonly ItemNumbers[],
  { fit, reliability = 0 }: Fitted & { readonly fit: ConvergedFit },
  part: Part,
): Precision {
  const topics = topicCurves(part, items);
  const questions = topics.reduce((sum, { count }) => sum + count, 0);
  const passMark = approximate(part.passMark.value);
  const ability = abilityFor(topics, passMark * questions);
  return {
    outcome: 'converged',
    reliability,
    questions,
    passMark,
    offAtPassMark: Math.sqrt(formAt(topics, ability).variance),
    errorOfMeasurement: errorOfTotals(totalsOf(answers), reliability),
    ability,
    curve: Array.from({ length: 61 }, (_, place) => {
      const at = -3 + place / 10;
      return { ability: at, information: formAt(topics, at).information };
    }),
    cycles: fit.cycles,
  };
}

/** Questions right of those with a form of the most common length; one left open is not right. */
function totalsOf({ responses: { items, scores }, asked }: PartAnswers): readonly number[] {
  const length = commonest(asked.map((own) => own.length));
  return asked.flatMap((own, row) =>
    own.length === length
      ? [own.reduce((sum, column) => sum + (scores[row * items + column] === 1 ? 1 : 0), 0)]
      : [],
  );
}

/** The part of a scheme by its names, or undefined. */
export function partNamed(
  { schemes }: Pick<Content, 'schemes'>,
  scheme: string,
  part: string,
): { readonly scheme: Scheme; readonly part: Part } | undefined {
  const found = [...schemes.values()].find(({ id }) => id === scheme);
  const own = found?.parts.find(({ id }) => id === part);
  return found && own && { scheme: found, part: own };
}
