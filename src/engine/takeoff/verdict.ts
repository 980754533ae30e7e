/**
 * Says what an answer is: right, right but badly rounded, a known slip, in the wrong unit, or wrong;
 * and what to do about it. Exact throughout: a handful of comparisons for each slip of the part.
 */
import type { Dimension } from '#engine/measure/dimension.ts';
import { rational, type Rational } from '#engine/measure/rational.ts';
import type { Text } from '#engine/text.ts';
import type { Answered, RoundRule } from './family.ts';
import { commonKind } from './formula-kinds.ts';
import type { Amount, Solved } from './instance.ts';
import { mixedUnits } from './mixed-units.ts';
import { rounded } from './rounding.ts';
import type { Reading } from './read-answer.ts';
import { isTape } from './style.ts';
import { tapeSlips } from './tape-slips.ts';
import { otherUnit } from './other-unit.ts';
import * as words from './verdict-words.ts';

export const verdictKinds = ['right', 'badly-rounded', 'slip', 'wrong-unit', 'wrong'] as const;
export type VerdictKind = (typeof verdictKinds)[number];

export type Verdict = {
  readonly kind: VerdictKind;
  /** What was found and what to do, never the answer itself. */
  readonly say: Text;
  /** Every slip that leads to this answer; of a slip only. */
  readonly slips: readonly Named[];
  /** Judged by the person's own answers to earlier parts. */
  readonly followed: boolean;
};

/** A slip by its id in the family, or one of reading the tape. */
export type Named = { readonly id: string; readonly tell: Text };

const verdict = (kind: VerdictKind, say: Text, slips: readonly Named[] = []): Verdict => ({
  kind,
  say,
  slips,
  followed: false,
});

/** `tell` fills in the numbers of the problem. */
export function judge(solved: Solved, reading: Reading, tell: (text: Text) => Text): Verdict {
  const { value } = reading;
  if (typeof value === 'boolean' || typeof solved.right === 'boolean') {
    return judgeDecision(solved, value, tell);
  }
  const { answer, term } = solved.part;
  const kind = term.kind as Dimension;
  if (!commonKind(value.dimension, kind)) {
    return verdict('wrong-unit', words.otherKind(value.dimension, kind));
  }
  const round = answer.kind === 'quantity' ? answer.round : undefined;
  const given = value.value;
  if (typeof solved.exact === 'boolean') throw new RangeError('An amount comes from an amount.');
  const exact = solved.exact.value;
  if (isRight(given, exact, solved.right.value, round)) return verdict('right', words.right);

  const rounding = isBadlyRounded(given, exact, round, answer);
  const slips = slipsTo(solved, given, tell);
  if (slips.length > 0) return verdict('slip', words.slipped(slips, rounding), slips);
  const tape = tapeSlips(value, solved.right);
  if (tape.length > 0) return verdict('slip', words.slipped(tape, false), tape);
  const meant = otherUnit(reading, solved.right);
  if (meant) return verdict('wrong-unit', words.otherUnit(meant));
  if (rounding) return verdict('badly-rounded', words.badlyRounded(round));
  const factor = mixedUnits(given, exact, round);
  if (factor) return verdict('wrong-unit', words.mixedUnits(factor));
  return verdict('wrong', words.wrong(given.compare(exact)));
}

function judgeDecision(solved: Solved, value: Amount, tell: (text: Text) => Text): Verdict {
  if (typeof value !== 'boolean' || typeof solved.right !== 'boolean') {
    return verdict('wrong', words.decide);
  }
  if (value === solved.right) return verdict('right', words.right);
  const slips = solved.slips
    .filter(({ answer }) => answer === value)
    .map(({ slip }) => ({ id: slip.id, tell: tell(slip.tell) }));
  return slips.length > 0
    ? verdict('slip', words.slipped(slips, false), slips)
    : verdict('wrong', words.wrongDecision);
}

const half = rational(1, 2);

/** An answer that is finer than asked is right too. */
const isRight = (
  given: Rational,
  exact: Rational,
  right: Rational,
  round: RoundRule | undefined,
): boolean =>
  given.equals(right) || (round?.how === 'nearest' && isWithin(given, exact, round, half));

const isWithin = (given: Rational, exact: Rational, { to }: RoundRule, steps: Rational): boolean =>
  given.sub(exact).abs().lte(to.value.mul(steps));

const slipsTo = ({ slips, part }: Solved, given: Rational, tell: (text: Text) => Text) =>
  slips
    .filter(({ slip, exact, answer }) => {
      if (typeof exact === 'boolean' || typeof answer === 'boolean') return false;
      return answer.value.equals(given) || isNear(given, exact.value, slip.round, part.answer);
    })
    .map(({ slip }) => ({ id: slip.id, tell: tell(slip.tell) }));

/**
 * As near to what a slip leads to as people get who round on the way: half a step on a tape, and where
 * the answer is in decimals a thousandth of it at least.
 */
function isNear(
  given: Rational,
  exact: Rational,
  round: RoundRule | undefined,
  answer: Answered,
): boolean {
  if (!round) return given.equals(exact);
  if (round.how !== 'nearest') return isWithin(given, exact, round, rational(1, 50));
  const isClose = given.sub(exact).abs().lte(exact.abs().div(1000n));
  return isWithin(given, exact, round, half) || (isInDecimals(answer, round) && isClose);
}

/**
 * The value that rounding the other way gives, a neighbour on the tape, or the value before rounding
 * as closely as people write it: to a twentieth of a step, to a thousandth of the whole where it is
 * counted or on a tape, and to three figures where it is in decimals.
 */
function isBadlyRounded(
  given: Rational,
  exact: Rational,
  round: RoundRule | undefined,
  answer: Answered,
): boolean {
  const off = given.sub(exact).abs();
  if (off.lte(exact.abs().div(isInDecimals(answer, round) ? 200n : 1000n))) return true;
  if (!round) return false;
  if (round.how === 'nearest') return isWithin(given, exact, round, rational(3, 2));
  const across = rounded(exact, { ...round, how: round.how === 'up' ? 'down' : 'up' });
  return given.equals(across) || isWithin(given, exact, round, rational(1, 20));
}

const isInDecimals = (answer: Answered, round: RoundRule | undefined): boolean =>
  answer.kind === 'quantity' && !isTape(answer.style) && round?.how === 'nearest';
