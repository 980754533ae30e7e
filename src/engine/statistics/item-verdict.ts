/**
 * What there is to say of each item: first whether there are answers enough to say it, then what speaks
 * against the item, then the figures. O(persons x items).
 */
import { type Enough, fewest, ifEnough } from './enough.ts';
import { type GroupDifference, groupDifference } from './group-difference.ts';
import { personsIn } from './form-strata.ts';
import { type Group, groupStrata } from './group-strata.ts';
import { type ItemFigures, itemFigures } from './item-figures.ts';
import type { Stratum } from './mantel-haenszel.ts';
import type { Responses } from './responses.ts';
import { type Interval, wilson } from './wilson.ts';

/** Common practice: below, or above, an item hardly tells anybody from anybody else. */
export const hardBelow = 0.3;
export const easyAbove = 0.95;

/** `isSure`: all of the 95 % interval lies beyond the line, not the figure alone. */
export type ItemFlag =
  | { readonly kind: 'too-hard' | 'too-easy' | 'pulls-wrong-way'; readonly isSure: boolean }
  | {
      readonly kind: 'differs-between-groups';
      readonly favours: Group;
      readonly size: 'moderate' | 'large';
    };

export type ItemVerdict = {
  readonly item: number;
  readonly answers: number;
  readonly standing: 'too-few-answers' | 'look-at-it' | 'nothing-against-it';
  /** What weighs most comes first. */
  readonly flags: readonly ItemFlag[];
  readonly proportion: Enough<{ readonly share: number; readonly interval: Interval }>;
  /** With how well persons did on the rest; `alike` where answers, or persons, do not differ. */
  readonly correlation: Enough<
    { readonly corrected: number; readonly interval: Interval } | 'alike'
  >;
  /** Undefined where no groups were given. Who did not answer every item is not compared. */
  readonly difference: Enough<GroupDifference> | undefined;
};

/**
 * One for each item, in order, where all were asked the same. Throws a RangeError unless each person has
 * a group, where groups are given.
 */
export const itemVerdicts = (
  responses: Responses,
  groups?: readonly Group[],
): readonly ItemVerdict[] =>
  verdictsWith(responses, groups && groupStrata(responses, groups).strata);

/** The same with what is compared between groups, such as from `formStrata`. */
export function verdictsWith(
  responses: Responses,
  strata: readonly (readonly Stratum[])[] | undefined,
): readonly ItemVerdict[] {
  return itemFigures(responses).map((figures, item) => {
    const { answers, right } = figures;
    const proportion = ifEnough(answers, fewest.proportion, () => ({
      share: right / answers,
      interval: wilson(right, answers),
    }));
    const correlation = ifEnough(answers, fewest.correlation, () => correlated(figures));
    const own = strata?.[item];
    const compared = own && personsIn(own);
    const difference =
      own &&
      ifEnough(Math.min(compared!.reference, compared!.focal), fewest.group, () =>
        groupDifference(own),
      );
    const flags = [...wrongWay(correlation), ...differing(difference), ...hardOrEasy(proportion)];
    const standing = !proportion.enough
      ? 'too-few-answers'
      : flags.length > 0
        ? 'look-at-it'
        : 'nothing-against-it';
    return { item, answers, standing, flags, proportion, correlation, difference };
  });
}

/** The interval by Fisher's transformation (R. A. Fisher 1921). */
function correlated({ answers, corrected }: ItemFigures) {
  if (corrected === undefined) return 'alike' as const;
  const reach = 1.959963984540054 / Math.sqrt(answers - 3);
  const turned = Math.atanh(corrected);
  return {
    corrected,
    interval: { low: Math.tanh(turned - reach), high: Math.tanh(turned + reach) },
  };
}

function wrongWay(correlation: ItemVerdict['correlation']): readonly ItemFlag[] {
  if (!correlation.enough || correlation.value === 'alike') return [];
  const { corrected, interval } = correlation.value;
  return corrected < 0 ? [{ kind: 'pulls-wrong-way', isSure: interval.high < 0 }] : [];
}

function differing(difference: ItemVerdict['difference']): readonly ItemFlag[] {
  if (!difference?.enough) return [];
  const { value } = difference;
  if (value.size !== 'moderate' && value.size !== 'large') return [];
  return [{ kind: 'differs-between-groups', favours: value.favours, size: value.size }];
}

function hardOrEasy(proportion: ItemVerdict['proportion']): readonly ItemFlag[] {
  if (!proportion.enough) return [];
  const { share, interval } = proportion.value;
  if (share < hardBelow) return [{ kind: 'too-hard', isSure: interval.high < hardBelow }];
  if (share > easyAbove) return [{ kind: 'too-easy', isSure: interval.low > easyAbove }];
  return [];
}
