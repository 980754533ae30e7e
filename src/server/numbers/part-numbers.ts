/** What the results of one part say, and how surely: all that its screens show. */
import type { Content } from '#engine/compile/content.ts';
import type { Part, Scheme } from '#engine/exam/scheme.ts';
import { approximate } from '#engine/measure/rational.ts';
import { type Enough, fewest, fewestForCurves, ifEnough } from '#engine/statistics/enough.ts';
import { abilityFor, formAt, type TopicCurves } from '#engine/statistics/form-precision.ts';
import { formStrata } from '#engine/statistics/form-strata.ts';
import type { ConvergedFit, ItemEstimate, ItemFit } from '#engine/statistics/item-fit.ts';
import { type ItemVerdict, verdictsWith } from '#engine/statistics/item-verdict.ts';
import { type Interval, wilson } from '#engine/statistics/wilson.ts';
import type { Db } from '../database/open-database.ts';
import {
  answersTo,
  firstTries,
  type PartAnswers,
  type PartKey,
  type Sat,
  satIn,
} from './answers.ts';
import { fitted } from './fit.ts';

export type Share = { readonly share: number; readonly interval: Interval };

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
  /** Of one shared slope, and of its own; undefined where answers were too few or the run stopped. */
  readonly curve: Enough<ItemEstimate | undefined>;
  readonly ownCurve: Enough<ItemEstimate | undefined>;
};

export type Precision = {
  /** From 0 to 1: how far results would come out the same on another form. */
  readonly reliability: number;
  /** Of a form of `questions`: somebody just at the pass mark would come out so many questions off. */
  readonly questions: number;
  readonly passMark: number;
  readonly offAtPassMark: number;
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
  readonly precision: Enough<Precision | 'not-converged'>;
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
    ...(await ofAnswers(answers, first, part)),
  };
}

export const passShare = (sat: readonly Sat[]): Enough<Share> =>
  ifEnough(sat.length, fewest.proportion, () => {
    const passed = sat.filter(({ result }) => result === 'passed').length;
    return { share: passed / sat.length, interval: wilson(passed, sat.length) };
  });

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
  const { responses, sittings, lengths } = answers;
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
  const verdicts = verdictsWith(responses, formStrata(responses, groups, lengths));
  const isAsked = persons >= needEach && verdicts.some(({ answers: own }) => own >= need);
  const [common, each] = await Promise.all([
    persons >= need ? fitted({ responses, model: 'slope-common' }) : undefined,
    isAsked ? fitted({ responses, model: 'slope-each' }) : undefined,
  ]);
  const items = answers.items.map(({ id, topic, open }, column) => ({
    id,
    topic,
    open,
    verdict: verdicts[column]!,
    // One slope is shared by all; what is the item's own takes as many answers as a correlation.
    curve: curveOf(
      common?.fit,
      column,
      [persons, need],
      verdicts[column]!.answers,
      fewest.correlation,
    ),
    ownCurve: curveOf(each?.fit, column, [persons, needEach], verdicts[column]!.answers, need),
  }));
  const precision = ifEnough(persons, need, () =>
    common?.fit.outcome === 'converged'
      ? precisionOf(answers, common.fit, common.reliability ?? 0, part)
      : 'not-converged',
  );
  return { precision, items };
}

function curveOf(
  fit: ItemFit | undefined,
  column: number,
  [persons, needed]: readonly [number, number],
  answers: number,
  neededAnswers: number,
): Enough<ItemEstimate | undefined> {
  if (persons < needed) return { enough: false, have: persons, need: needed };
  return ifEnough(answers, neededAnswers, () =>
    fit?.outcome === 'converged' ? fit.items[column] : undefined,
  );
}

function precisionOf(
  { items }: PartAnswers,
  fit: ConvergedFit,
  reliability: number,
  part: Part,
): Precision {
  const columns = fit.items.flatMap((item, column) => (item.estimable ? [{ item, column }] : []));
  const counts = part.kind === 'written' ? part.blueprint : new Map<string, number>();
  const topics: readonly TopicCurves[] = [...counts].map(([topic, count]) => ({
    count,
    curves: columns.flatMap(({ item: { slope, intercept }, column }) =>
      items[column]!.topic === topic ? [{ slope, intercept }] : [],
    ),
  }));
  const questions = [...counts.values()].reduce((sum, count) => sum + count, 0);
  const passMark = approximate(part.passMark.value);
  const ability = abilityFor(topics, passMark * questions);
  return {
    reliability,
    questions,
    passMark,
    offAtPassMark: Math.sqrt(formAt(topics, ability).variance),
    ability,
    curve: Array.from({ length: 61 }, (_, place) => {
      const at = -3 + place / 10;
      return { ability: at, information: formAt(topics, at).information };
    }),
    cycles: fit.cycles,
  };
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
