/** What holds of every shipped family, on ten thousand seeds each. */
import { describe, expect, it } from 'vitest';
import { commonDimension, dimension, type Dimension } from '#engine/measure/dimension.ts';
import { encodeQuantity } from '#engine/measure/encode-quantity.ts';
import { ofBaseUnits, type Quantity } from '#engine/measure/quantity.ts';
import { roundToMultiple, type Rational } from '#engine/measure/rational.ts';
import type { Part } from '#engine/takeoff/family.ts';
import { namesAskedIn } from '#engine/takeoff/fill-text.ts';
import type { Term } from '#engine/takeoff/formula.ts';
import { instanceOf, type Amount, type Instance, type Solved } from '#engine/takeoff/instance.ts';
import { judgeAnswer } from '#engine/takeoff/marks.ts';
import { writeAnswer } from '#engine/takeoff/problem.ts';
import { readAnswer } from '#engine/takeoff/read-answer.ts';
import { namesIn, termsOf } from '#engine/takeoff/terms.ts';
import { taken, type Takeoff } from '#engine/takeoff/takeoff.ts';
import { workedSolution } from '#engine/takeoff/worked.ts';
import { topics } from '#engine/takeoff/topic.ts';
import { languages } from '#engine/text.ts';
import { byQuantities } from '../engine/takeoff/by-quantities.ts';
import { content, takeoff } from '../engine/takeoff/shipped.ts';

const ids = [...content.takeoffs.keys()];
const seeds = 10_000;

const takeoffs = new Map<string, Takeoff>(ids.map((id) => [id, takeoff(id)]));

const made = (id: string, seed: number): Instance => {
  const found = instanceOf(takeoffs.get(id)!, seed);
  if (!found.ok) throw new Error(`${id}, seed ${seed}: ${found.error.rejection.kind}`);
  return found.value;
};

/** Told apart from the engine's own way: by floor and halves, on the numbers as they are answered. */
function isByAHair(exact: Rational, step: Rational, how: 'up' | 'down' | 'nearest'): boolean {
  const steps = exact.div(step);
  const over = steps.sub(steps.floor());
  const [n, d] = [Number(over.n), Number(over.d)];
  const part = n / d;
  return how === 'nearest'
    ? Math.abs(part - 0.5) < 0.0199
    : (part > 0 && part < 0.0199) || part > 0.9801;
}

const isLike = (a: Quantity, b: Amount | undefined): boolean =>
  typeof b === 'object' &&
  a.value.equals(b.value) &&
  commonDimension(a.dimension, b.dimension) !== undefined;

/** Nothing, one of something, or a number that it is worked out from: told apart from the engine's own way. */
function isGivenAway({ takeoff, givens, parts }: Instance, part: Part, right: Quantity): boolean {
  const usedOf = ({ op, name }: Term & { readonly name: string }): Amount | undefined =>
    op === 'given'
      ? givens.get(name as never)
      : op === 'part'
        ? parts.find(({ part }) => part.id === name)!.right
        : taken(takeoff.sheet.numbers.get(name as never)!, 'aim', new Map());
  const isOne = commonDimension(right.dimension, dimension('ratio')) && right.value.equals(1n);
  return (
    right.value.equals(0n) ||
    isOne === true ||
    namesIn(part.formula).some((term) => isLike(right, usedOf(term)))
  );
}

function complaint(instance: Instance, { part, exact, right, slips }: Solved): string | undefined {
  const missing = part.slips.filter(
    ({ id, mayAgree }) => !mayAgree && !slips.some(({ slip }) => slip.id === id),
  );
  if (missing.length > 0) return `${missing[0]!.id} leads to the right answer`;
  if (typeof right === 'boolean' || typeof exact === 'boolean') return undefined;
  const { answer } = part;
  const round = answer.kind === 'quantity' ? answer.round : undefined;
  if (round) {
    const again = roundToMultiple(exact.value, round.to.value, round.how);
    if (!again.equals(right.value)) return 'it is not rounded as asked';
    if (isByAHair(exact.value, round.to.value, round.how)) return 'it hangs on a hair';
  } else if (!exact.value.equals(right.value)) return 'it is rounded unasked';
  if (right.value.lt(0n)) return 'it is below nothing';
  if (!part.mayBeTrivial && isGivenAway(instance, part, right))
    return 'there is nothing to work out';
  const { takeoff, givens } = instance;
  const broken = takeoff.family.givens.find(({ id, from }) => {
    const value = givens.get(id);
    return (
      from.kind === 'range' &&
      typeof value === 'object' &&
      (value.value.lt(from.from.value) || value.value.gt(from.to.value))
    );
  });
  return broken && `${broken.id} lies outside its range`;
}

describe('truth', () => {
  it('there are families of every topic, at least eighteen', () => {
    expect(ids.length).toBeGreaterThanOrEqual(18);
    const shown = new Set([...content.takeoffs.values()].map(({ topic }) => topic));
    expect([...shown].toSorted()).toEqual([...topics].toSorted());
  });

  it('every part that is computed has a slip', () => {
    const families = [...content.takeoffs.values()];
    for (const { id, parts } of families) {
      for (const part of parts) expect(part.slips.length, `${id}/${part.id}`).toBeGreaterThan(0);
    }
  });

  it('every family has a picture but the one that counts money, and a whole wall has two views', () => {
    const viewsOf = (count: number) =>
      [...content.takeoffs.values()].flatMap(({ id, pictures }) =>
        pictures.length === count ? [id] : [],
      );
    expect(viewsOf(0)).toEqual(['cost-of-take-off']);
    expect(viewsOf(2)).toEqual(['whole-wall']);
  });

  it('what a slip tells is different from what every other of its part tells', () => {
    for (const { id, parts } of content.takeoffs.values()) {
      for (const part of parts) {
        for (const language of languages) {
          const told = part.slips.map(({ tell }) => tell[language]);
          expect(new Set(told).size, `${id}/${part.id}`).toBe(told.length);
        }
      }
    }
  });

  it('no text of a question or of a slip tells an answer', () => {
    for (const { id, parts } of content.takeoffs.values()) {
      const answers = new Set<string>(parts.map((part) => part.id));
      for (const part of parts) {
        for (const text of [part.ask, ...part.slips.map(({ tell }) => tell)]) {
          expect(
            namesAskedIn(text, 'en').filter((name) => answers.has(name)),
            id,
          ).toEqual([]);
        }
      }
    }
  });
});

describe.each(ids)('%s', (id) => {
  it(
    `on ${seeds} seeds holds its guards and has no slip that is right`,
    { timeout: 60_000 },
    () => {
      const complaints: string[] = [];
      const reached = new Set<string>();
      for (let seed = 0; seed < seeds; seed += 1) {
        const instance = made(id, seed);
        for (const solved of instance.parts) {
          const wrong = complaint(instance, solved);
          if (wrong) complaints.push(`seed ${seed}, ${solved.part.id}: ${wrong}`);
          for (const { slip } of solved.slips) reached.add(`${solved.part.id}/${slip.id}`);
        }
      }
      expect(complaints.slice(0, 5)).toEqual([]);
      const all = made(id, 0).takeoff.family.parts.flatMap((part) =>
        part.slips.map((slip) => `${part.id}/${slip.id}`),
      );
      expect(all.filter((slip) => !reached.has(slip))).toEqual([]);
    },
  );

  it('its answers are those of the arithmetic of dimensions, term by term', () => {
    for (let seed = 0; seed < 60; seed += 1) {
      const instance = made(id, seed);
      const { sheet } = instance.takeoff;
      const lookup = (term: Term & { readonly name: string }): Amount => {
        if (term.op === 'given') return instance.givens.get(term.name as never)!;
        if (term.op === 'part')
          return instance.parts.find(({ part }) => part.id === term.name)!.right;
        const number = sheet.numbers.get(term.name as never)!;
        const value = taken(number, 'aim', new Map());
        return ofBaseUnits(value.value, term.kind as Dimension);
      };
      for (const { part, exact, slips } of instance.parts) {
        expect(stored(byQuantities(part.formula.root, lookup))).toBe(stored(exact));
        for (const { slip, exact } of slips) {
          expect(stored(byQuantities(slip.formula.root, lookup))).toBe(stored(exact));
        }
      }
    }
    expect([...termsOf(takeoff(id).family)].length).toBeLessThanOrEqual(takeoff(id).family.terms);
  });

  it('a right answer, written as the key writes it, is read and judged right in both languages', () => {
    for (let seed = 0; seed < 30; seed += 1) {
      const instance = made(id, seed);
      for (const { part, right } of instance.parts) {
        for (const language of languages) {
          const text = writeAnswer(part.answer, right, language);
          const read = readAnswer(part, text);
          const verdict = read.ok ? judgeAnswer(instance, part.id, read.value).kind : 'unread';
          expect(`${part.id} ${text} ${verdict}`).toBe(`${part.id} ${text} right`);
        }
      }
    }
  });

  it('the answer of a slip is judged that slip', () => {
    for (let seed = 0; seed < 30; seed += 1) {
      const instance = made(id, seed);
      for (const { part, slips } of instance.parts) {
        for (const { slip, answer } of slips) {
          const verdict = judgeAnswer(instance, part.id, { value: answer, unit: undefined });
          const named = verdict.slips.map(({ id }) => id);
          expect([verdict.kind, named.includes(slip.id)], `${part.id}/${slip.id}`).toEqual([
            'slip',
            true,
          ]);
        }
      }
    }
  });

  it('its working ends in the answer, and no line of it is broken', () => {
    for (let seed = 0; seed < 30; seed += 1) {
      const instance = made(id, seed);
      for (const { part, right } of instance.parts) {
        const lines = workedSolution(instance, part.id);
        for (const language of languages) {
          const last = lines.at(-1)!.text[language];
          expect(last).toBe(`${part.name[language]}: ${writeAnswer(part.answer, right, language)}`);
          for (const { text } of lines) {
            expect(text[language]).not.toMatch(/undefined|NaN|\[object|\{|\}|Infinity/);
            expect(brackets(text[language])).toBe(0);
          }
        }
        expect(lines.length).toBeLessThan(24);
      }
    }
  });
});

const stored = (amount: Amount): string => {
  if (typeof amount === 'boolean') return String(amount);
  const { value } = encodeQuantity(amount);
  return `${value} ${JSON.stringify(amount.dimension.powers)}`;
};

const brackets = (text: string): number =>
  [...text].reduce((open, sign) => open + (sign === '(' ? 1 : sign === ')' ? -1 : 0), 0);
