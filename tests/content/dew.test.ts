import { describe, expect, it } from 'vitest';
import type { Attempt, Played } from '#engine/marking/attempt.ts';
import { standingOf } from '#engine/marking/attempt.ts';
import { review } from '#engine/marking/review.ts';
import { touchAt } from '#engine/marking/touch-test.ts';
import { amountIn, quantity } from '#engine/measure/conversion.ts';
import { approximate, rational } from '#engine/measure/rational.ts';
import { marginAboveDewPoint } from '#engine/method/dew-point.ts';
import { isDewy, touch } from '#engine/method/drying.ts';
import type { SettingId } from '#engine/method/method.ts';
import { partOf } from '#engine/method/part-of.ts';
import { precedes, predecessors } from '#engine/method/partial-order.ts';
import { orderSampler } from '#engine/method/sample-order.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { weatherAfter } from '#engine/method/site.ts';
import { below, randomFrom, shuffle, whole } from '#engine/random.ts';
import { walls } from './walls.ts';

const damp = walls.filter(({ sequence }) => sequence.site['weather'] === 'damp');
const placeOf = ({ steps }: Sequence, id: string): number =>
  steps.findIndex((step) => step.id === id);
const primer: Readonly<Record<string, string>> = { 'window-sill': 'prime-opening' };
const primed = (sequence: Sequence): number =>
  placeOf(sequence, primer[sequence.method.id] ?? 'prime-wall');

type Card = { readonly step: number; readonly minute: number; readonly margin?: number };

const played = (sequence: Sequence, cards: readonly Card[]): Attempt => ({
  sequence,
  played: cards.map(({ step, minute, margin }): Played => ({
    card: sequence.steps[step]!.id,
    settings:
      margin === undefined ? new Map() : new Map([['margin' as SettingId, quantity(margin, 'F°')]]),
    minute: rational(minute),
  })),
});

/** As written, with a day between any two cards. */
const unhurried = (steps: readonly number[]): readonly Card[] =>
  steps.map((step, index) => ({ step, minute: index * 1500 }));

/** What a knuckle tells of a card when the first card comes that had to wait for it. */
function feltWhenCovered(attempt: Attempt, step: number) {
  const { sequence } = attempt;
  const standing = standingOf(attempt);
  const at = standing.findIndex((card) => card.step === step);
  const next = standing.findIndex(
    (later, index) => index > at && precedes(sequence.order, step, later.step),
  );
  if (at < 0 || next < 0) return undefined;
  return touchAt(sequence, standing.slice(0, next), standing[at]!, standing[next]!.minute!);
}

describe('truth', () => {
  const base = damp.find(({ sequence }) => sequence.method.id === 'base-of-wall')!.sequence;
  const minutes = (id: string): number =>
    approximate(amountIn(base.steps[placeOf(base, id)]!.dries!.least, 'min'));

  it('dries by the sheet at 60 °F and 82 % once the wall is warm: 3 min, times 1 + 22/25 of a half', () => {
    expect(minutes('prime-wall')).toBeCloseTo(3 * 1.44, 12);
  });

  it('dries by the cold air where nobody has to warm anything before: at 54 °F, 3.6 min times that', () => {
    expect(minutes('prime-sheet')).toBeCloseTo(3.6 * 1.44, 12);
  });

  it('tells wet, tacky and dry by the time passed, and dew whatever the time', () => {
    const step = primed(base);
    const warm = placeOf(base, 'warm-surface');
    const after = (seconds: number, ...done: readonly number[]) =>
      touch(base, new Set(done), step, rational(seconds, 60));
    expect([0, 129, 130, 259, 260].map((seconds) => after(seconds, warm))).toEqual([
      'wet',
      'wet',
      'tacky',
      'tacky',
      'dry',
    ]);
    expect([0, 260, 1_000_000].map((seconds) => after(seconds))).toEqual(['dew', 'dew', 'dew']);
  });

  it('begins to dry when the wall is warmed, if that comes late', () => {
    const [step, warm] = [primed(base), placeOf(base, 'warm-surface')];
    const attempt = played(base, [
      { step, minute: 0 },
      { step: warm, minute: 60 },
    ]);
    const [card, ...rest] = standingOf(attempt);
    const at = (minute: number) => touchAt(base, [card!, ...rest], card!, rational(minute));
    expect([60, 63, 65].map(at)).toEqual(['wet', 'tacky', 'dry']);
    expect(touchAt(base, [card!], card!, rational(59))).toBe('dew');
  });

  it('leaves a part of the work the warm wall that stands already', () => {
    const part = partOf(base, ['prime-wall', 'tape-top-edge'] as never)!;
    expect(part.weather.get('surface-temperature')).toEqual(quantity(60, '°F'));
    expect(touch(part, new Set([0]), 0, rational(5))).toBe('dry');
  });
});

describe('laws of dew', () => {
  it.each(walls)(
    'all that must stay clear of dew does, as the work goes: $name',
    ({ sequence }) => {
      const watched = sequence.steps.filter(({ dries }) => dries?.margin);
      expect(watched.length).toBeGreaterThan(0);
      sequence.steps.forEach(({ dries }, place) => {
        const before = predecessors(sequence.order, place).map((each) => sequence.steps[each]!);
        if (dries) expect(isDewy(dries, weatherAfter(sequence.weather, before))).toBe(false);
      });
    },
  );

  it.each(damp)('nothing stays dry before the surface is warm: $name', ({ sequence }) => {
    const margin = marginAboveDewPoint(sequence.weather)!;
    expect(approximate(amountIn(margin, 'F°'))).toBeLessThan(5);
    expect(isDewy(sequence.steps[primed(sequence)]!.dries!, sequence.weather)).toBe(true);
  });

  it.each(damp)(
    'to leave the surface cold is one fault and a leak, however long one waits: $name',
    ({ sequence }) => {
      const warm = placeOf(sequence, 'warm-surface');
      const attempt = played(
        sequence,
        unhurried([...sequence.steps.keys()].filter((step) => step !== warm)),
      );
      const { items, water, outcome } = review(attempt);
      expect(items).toMatchObject([
        { kind: 'left-out', card: 'warm-surface', severity: 'critical' },
      ]);
      expect(water.leaks).not.toEqual([]);
      expect(outcome).toBe('tear-out');
      expect(feltWhenCovered(attempt, primed(sequence))).toBe('dew');
    },
  );

  it.each(damp)('to warm it after priming is one fault and a leak: $name', ({ sequence }) => {
    const [warm, prime] = [placeOf(sequence, 'warm-surface'), primed(sequence)];
    const rest = [...sequence.steps.keys()].filter((step) => step !== warm);
    const late = rest.toSpliced(rest.indexOf(prime) + 1, 0, warm);
    const { items, water } = review(played(sequence, unhurried(late)));
    const kinds = items.map(({ kind, severity }) => `${kind} ${severity}`);
    expect(kinds).toEqual(['out-of-order critical']);
    expect(water.leaks).not.toEqual([]);
  });

  it.each(damp)(
    'to begin too near the dew point is out of tolerance, and leaks: $name',
    ({ sequence }) => {
      const warm = placeOf(sequence, 'warm-surface');
      const withMargin = (margin: number) =>
        played(
          sequence,
          unhurried([...sequence.steps.keys()]).map((card) =>
            card.step === warm ? { ...card, margin } : card,
          ),
        );
      const { items, water } = review(withMargin(4));
      expect(items).toMatchObject([{ kind: 'out-of-tolerance', card: 'warm-surface' }]);
      expect(water.leaks).not.toEqual([]);
      expect(feltWhenCovered(withMargin(4), primed(sequence))).toBe('dew');
      expect(review(withMargin(5)).items).toEqual([]);
      expect(feltWhenCovered(withMargin(5), primed(sequence))).toBe('dry');
    },
  );
});

describe('laws of the touch test', () => {
  const drawnCards = (sequence: Sequence, random: ReturnType<typeof randomFrom>) => {
    const sampler = orderSampler(sequence.order);
    if (!sampler.ok) throw new Error(sampler.error.code);
    const correct = sampler.value((n) => below(random, n));
    const steps = whole(random, 0, 1) === 0 ? correct : shuffle(random, correct);
    let minute = 0;
    return steps.slice(whole(random, 0, 3)).map((step): Card => {
      minute += whole(random, 0, 3);
      return { step, minute, margin: whole(random, 3, 8) };
    });
  };

  it.each(walls)('agrees with the review, whatever was played and when: $name', ({ sequence }) => {
    const random = randomFrom('touch');
    const changers = sequence.steps.filter(({ changes }) => changes.size > 0).map(({ id }) => id);
    for (let round = 0; round < 12; round += 1) {
      const cards = drawnCards(sequence, random).map((card) =>
        changers.includes(sequence.steps[card.step]!.id)
          ? card
          : { step: card.step, minute: card.minute },
      );
      const attempt = played(sequence, cards);
      const { items } = review(attempt);
      sequence.steps.forEach(({ id, dries }, step) => {
        const felt = dries && feltWhenCovered(attempt, step);
        if (felt === undefined) return;
        const isRushed = items.some(({ kind, card }) => kind === 'rushed' && card === id);
        if (felt !== 'dew') expect(isRushed, `${id} feels ${felt}`).toBe(felt !== 'dry');
        else {
          const told = items.some(
            ({ kind, card }) => kind === 'out-of-order' || changers.includes(card as typeof id),
          );
          expect(told, `${id} on dew`).toBe(true);
        }
      });
    }
  });
});
