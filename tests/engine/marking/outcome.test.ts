import { describe, expect, it } from 'vitest';
import type { AttemptFile } from '#engine/marking/attempt-file.ts';
import { standingOf } from '#engine/marking/attempt.ts';
import { attemptFrom } from '#engine/marking/attempt-from.ts';
import { type Deviation, type DeviationKind, deviationKinds } from '#engine/marking/deviation.ts';
import { acceptableScore, type Outcome, outcomeOf } from '#engine/marking/outcome.ts';
import { review } from '#engine/marking/review.ts';
import type { Rework } from '#engine/method/method.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { type Severity, severities } from '#engine/severity.ts';
import { openContent } from '#server/content.ts';
import { soundFolder } from '../../content/fixtures.ts';

const content = openContent(soundFolder);

const attemptOf = (steps: AttemptFile['steps'], edge = 'plain') => {
  const attempt = attemptFrom({ method: 'tiny-wall', site: { edge }, steps }, content);
  if (!attempt.ok) throw new Error(JSON.stringify(attempt.error));
  return attempt.value;
};

/** Prime, then hang: two steps, the second of which covers the first. */
const right = attemptOf([{ step: 'prime' }, { step: 'hang' }]);
const { sequence } = right;
const built = standingOf(right);

/** Only what the outcome looks at. */
const deviation = (
  kind: DeviationKind,
  severity: Severity,
  undo: Rework['undo'],
  card = 'prime',
): Deviation =>
  ({
    kind,
    card,
    at: kind === 'left-out' ? undefined : 0,
    severity,
    rework: { undo, say: { en: '', es: '' } },
  }) as Deviation;

const kindsBySeverity = deviationKinds.flatMap((kind) =>
  severities.map((severity) => ({ kind, severity })),
);

describe('truth', () => {
  it('nothing wrong is accepted', () => {
    expect(outcomeOf(sequence, built, [], 100)).toBe('accept');
  });

  // What lies over it can be reached in place, or has to come off.
  const inPlace: Readonly<Record<Severity, Outcome>> = {
    minor: 'accept',
    major: 'rework',
    critical: 'rework',
  };
  const covered: Readonly<Record<Severity, Outcome>> = { ...inPlace, critical: 'tear-out' };

  it.each(kindsBySeverity)('$severity, $kind, to be mended in place', ({ kind, severity }) => {
    const found = deviation(kind, severity, 'in-place');
    expect(outcomeOf(sequence, built, [found], 99)).toBe(inPlace[severity]);
  });

  it.each(kindsBySeverity)('$severity, $kind, under what must come off', ({ kind, severity }) => {
    const found = deviation(kind, severity, 'tear-out');
    const standing = kind === 'left-out' ? built.slice(1) : built;
    expect(outcomeOf(sequence, standing, [found], 99)).toBe(covered[severity]);
  });

  it('what was left out and nothing covers is put in, not torn out', () => {
    const found = deviation('left-out', 'critical', 'tear-out', 'hang');
    expect(outcomeOf(sequence, built.slice(0, 1), [found], 50)).toBe('rework');
    expect(outcomeOf(sequence, [], [deviation('left-out', 'critical', 'tear-out')], 0)).toBe(
      'rework',
    );
  });

  it('minor faults are accepted down to the acceptable score, and not a tenth below', () => {
    const found = [deviation('done-again', 'minor', 'in-place')];
    expect(acceptableScore).toBe(90);
    expect(outcomeOf(sequence, built, found, 90)).toBe('accept');
    expect(outcomeOf(sequence, built, found, 89.9)).toBe('rework');
  });
});

describe('laws', () => {
  it.each(deviationKinds)('one critical item is never accepted: %s', (kind) => {
    for (const undo of ['in-place', 'tear-out'] as const) {
      for (const card of ['prime', 'hang']) {
        for (const standing of [built, built.slice(1), []]) {
          for (const others of [[], [deviation('done-again', 'minor', 'in-place')]]) {
            const found = [deviation(kind, 'critical', undo, card), ...others];
            expect(outcomeOf(sequence, standing, found, 100)).not.toBe('accept');
          }
        }
      }
    }
  });

  const setTo = (severity: Severity): Sequence => ({
    ...sequence,
    steps: sequence.steps.map((step) => ({
      ...step,
      severity,
      dries: step.dries && { ...step.dries, severity },
      asks: step.asks.map((ask) => ({ ...ask, severity })),
    })),
    constraints: sequence.constraints.map((constraint) => ({ ...constraint, severity })),
    strays: sequence.strays.map((stray) =>
      stray.kind === 'decoy' ? { ...stray, decoy: { ...stray.decoy, severity } } : stray,
    ),
  });

  // Work done again, and steps of another wall, are minor on any: they only cost time.
  const spoilt: Partial<Record<DeviationKind, AttemptFile['steps']>> = {
    'left-out': [{ step: 'hang' }],
    'out-of-order': [{ step: 'hang' }, { step: 'prime' }],
    'not-on-this-wall': [{ step: 'prime' }, { step: 'hang' }, { step: 'heat' }],
    rushed: [
      { step: 'prime', minute: 0 },
      { step: 'hang', minute: 1 },
    ],
    'out-of-tolerance': [{ step: 'prime' }, { step: 'hang', settings: { 'turn-up': '7 in' } }],
  };

  it.each(
    Object.entries(spoilt).flatMap(([kind, steps]) =>
      severities.map((severity) => ({ kind, steps, severity })),
    ),
  )(
    'a wall that is only $kind, $severity, is judged by that alone',
    ({ kind, steps, severity }) => {
      const attempt = { ...attemptOf(steps), sequence: setTo(severity) };
      const { items, outcome, score } = review(attempt);
      expect(items.map((item) => [item.kind, item.severity])).toEqual([[kind, severity]]);
      const isSound = severity === 'minor' && score >= acceptableScore;
      expect(outcome === 'accept').toBe(isSound);
    },
  );

  it('work done again is minor on the gravest wall', () => {
    const again = attemptOf([{ step: 'prime' }, { step: 'hang' }, { step: 'hang' }]);
    const { items } = review({ ...again, sequence: setTo('critical') });
    expect(items.map(({ kind, severity }) => [kind, severity])).toEqual([['done-again', 'minor']]);
  });
});
