/**
 * Makes a problem of a family from a seed: draws the givens again and again until they make a good one.
 * The same seed, family and numbers give the same problem for ever. Each draw costs one exact operation
 * a term; how many draws a family takes on average is held by a test.
 */
import type { Quantity } from '#engine/measure/quantity.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { randomFrom } from '#engine/random.ts';
import { enter, leave } from './base.ts';
import { drawGivens, type Drawn } from './draw-givens.ts';
import { isTrivial } from './trivial.ts';
import type { Family, GivenId, Part, PartId, Slip, SlipId } from './family.ts';
import type { Kind, Term, Value } from './formula.ts';
import { answerOf, isSame, rounded, truth, workOut, type Slate } from './slate.ts';
import { slateOf, type Takeoff } from './takeoff.ts';

/** What a given or an answer is worth. */
export type Amount = Quantity | boolean;

/** One problem, or one job, with its numbers and its answers. */
export type Instance = {
  readonly takeoff: Takeoff;
  readonly givens: ReadonlyMap<GivenId, Amount>;
  readonly parts: readonly Solved[];
  /** Everything worked out so far, for what is asked later. */
  readonly slate: Slate;
};

export type Solved = {
  readonly part: Part;
  /** Before rounding. */
  readonly exact: Amount;
  readonly right: Amount;
  /** Those slips only that lead to another answer here. */
  readonly slips: readonly Slipped[];
};

export type Slipped = { readonly slip: Slip; readonly exact: Amount; readonly answer: Amount };

/** Why a draw makes no good problem. */
export type Rejection =
  | { readonly kind: 'makes-no-sense' | 'needs' | 'where' | 'hangs-on-rounding' }
  | { readonly kind: 'trivial'; readonly part: PartId }
  | { readonly kind: 'slip-is-right'; readonly part: PartId; readonly slip: SlipId };

export type InstanceFault = {
  readonly code: 'NO_INSTANCE';
  /** Of the last draw. */
  readonly rejection: Rejection;
};

const mostDraws = 400;

/**
 * The problem of that seed. Where the data sheet leaves no numbers for which every slip is wrong (no
 * waste at all, say), those slips are left out of it.
 */
export function instanceOf(
  takeoff: Takeoff,
  seed: number | string,
): Result<Instance, InstanceFault> {
  const random = randomFrom(`${seed}/takeoff/${takeoff.family.id}`);
  let second: Drawn | undefined;
  let rejection: Rejection = { kind: 'where' };
  for (let draw = 0; draw < mostDraws; draw += 1) {
    const drawn = drawGivens(takeoff.family, random);
    const slate = slateWith(takeoff, drawn);
    const wrong = judgeDraw(takeoff.family, slate);
    if (!wrong) return ok(instanceFrom(takeoff, slate));
    if (wrong.kind === 'slip-is-right') second ??= drawn;
    rejection = wrong;
  }
  return second
    ? ok(instanceFrom(takeoff, slateWith(takeoff, second)))
    : fault({ code: 'NO_INSTANCE', rejection });
}

export function slateWith(takeoff: Takeoff, drawn: Drawn): Slate {
  const slate = slateOf(takeoff);
  for (const [given, value] of drawn) slate.values[given.term.place] = value;
  return slate;
}

/** Nothing where the draw makes a good problem. Cheap reasons come first. */
export function judgeDraw(family: Family, slate: Slate): Rejection | undefined {
  try {
    if (!family.needs.every(({ that }) => truth(that.root, slate))) return { kind: 'needs' };
    if (!family.where.every(({ root }) => truth(root, slate))) return { kind: 'where' };
    for (const part of family.parts) {
      const answer = workOut(part.term, slate);
      if (slate.hangs) return { kind: 'hangs-on-rounding' };
      if (isTrivial(part, answer, slate)) return { kind: 'trivial', part: part.id };
    }
    // Only now: what a slip rounds on its way must not count as hanging.
    for (const part of family.parts) {
      const answer = workOut(part.term, slate);
      const right = part.slips.find(
        (slip) => !slip.mayAgree && isSame(slipAnswer(slip, slate), answer),
      );
      if (right) return { kind: 'slip-is-right', part: part.id, slip: right.id };
    }
    return undefined;
  } catch (error) {
    if (error instanceof RangeError) return { kind: 'makes-no-sense' };
    throw error;
  }
}

const slipAnswer = ({ formula, round }: Slip, slate: Slate): Value => {
  const exact = workOut(formula.root, slate);
  return typeof exact === 'boolean' ? exact : rounded(exact, round);
};

/** Throws a RangeError where the numbers make no sense. */
export function instanceFrom(takeoff: Takeoff, slate: Slate): Instance {
  const { givens, parts } = takeoff.family;
  return {
    takeoff,
    givens: new Map(givens.map(({ id, term }) => [id, amountOf(term, slate)])),
    parts: parts.map((part) => solve(part, slate)),
    slate,
  };
}

export function solve(part: Part, slate: Slate): Solved {
  const { kind } = part.formula.root;
  const right = answerOf(part, slate);
  return {
    part,
    exact: amount(workOut(part.formula.root, slate), kind),
    right: amount(right, part.term.kind),
    slips: part.slips.flatMap((slip) => {
      const slipped = slippedBy(slip, slate);
      return slipped && !isSame(slipped.answer, right)
        ? [named(slip, slipped, part.term.kind)]
        : [];
    }),
  };
}

/** Nothing where the wrong way leads nowhere, as in a division by zero. */
function slippedBy({ formula, round }: Slip, slate: Slate) {
  try {
    const exact = workOut(formula.root, slate);
    return { exact, answer: typeof exact === 'boolean' ? exact : rounded(exact, round) };
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** Put into units only where somebody asks: most slips are never looked at. */
const named = (
  slip: Slip,
  slipped: { readonly exact: Value; readonly answer: Value },
  kind: Kind,
): Slipped => ({
  slip,
  get exact() {
    return amount(slipped.exact, kind);
  },
  get answer() {
    return amount(slipped.answer, kind);
  },
});

export const amount = (value: Value, kind: Kind): Amount =>
  typeof value === 'boolean' || kind === 'truth' ? value === true : leave(value, kind);

export const amountOf = (term: Term, slate: Slate): Amount =>
  amount(workOut(term, slate), term.kind);

export const valueOf = (given: Amount): Value =>
  typeof given === 'boolean' ? given : enter(given);
