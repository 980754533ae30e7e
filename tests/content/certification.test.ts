/** One candidate's way through a shipped scheme, from the first form to the renewal. */
import { describe, expect, test } from 'vitest';
import { isoDateFrom, type IsoDate } from '#engine/calendar.ts';
import { rational } from '#engine/measure/rational.ts';
import { accept } from '#engine/exam/accept.ts';
import type { BankItem } from '#engine/exam/bank.ts';
import { decide, type Application } from '#engine/exam/decision.ts';
import { drawForm } from '#engine/exam/form.ts';
import { handsOnResult } from '#engine/exam/hands-on-result.ts';
import { judgedPoints } from '#engine/exam/judged-points.ts';
import { renewalPhase, renewalStanding } from '#engine/exam/renewal.ts';
import type { PartId, WrittenPart } from '#engine/exam/scheme.ts';
import { partResult } from '#engine/exam/score.ts';
import {
  allowedFor,
  givenAnswers,
  newSitting,
  usualGrace,
  type Sitting,
} from '#engine/exam/sitting.ts';
import type { Happening } from '#engine/exam/sitting-event.ts';
import { standingOf, type Tried } from '#engine/exam/standing.ts';
import { witnessPoints } from '#engine/exam/witness.ts';
import { right } from '../engine/exam/watched.ts';
import { content, walls } from './walls.ts';

const scheme = [...content.schemes.values()].find(({ requires }) => requires.length === 0)!;
const written = scheme.parts.find((part): part is WrittenPart => part.kind === 'written')!;

const day = (text: string): IsoDate => {
  const date = isoDateFrom(text);
  if (!date.ok) throw new Error(text);
  return date.value;
};

const bank: readonly BankItem[] = [...written.blueprint].flatMap(([topic, count]) =>
  Array.from({ length: 3 * count }, (_, index) => ({
    id: `${topic}-${index}`,
    topic,
    kind: 'choose-one',
    difficulty: 0.4 + (index % 10) / 20,
    exposures: 0,
  })),
);

/** A sitting in which every question is answered right but `wrongs` of them. */
function sat(wrongs: number): Sitting {
  const form = drawForm({ bank, blueprint: written.blueprint, seed: 'rosa/1', drawn: 0 });
  if (!form.ok) throw new Error(form.error.map(({ code }) => code).join(', '));
  const items = form.value.items.map(({ id }) => id);
  const allowed = allowedFor(written);
  const plan = { id: 's', candidate: 'rosa', part: written.id, items, allowed, grace: usualGrace };
  const happenings: readonly Happening[] = [
    { kind: 'opened', by: 'ines' },
    ...items.map((item, index) => ({
      kind: 'answered' as const,
      answer: {
        id: `a${index}`,
        sequence: index + 1,
        tab: 'a',
        item,
        value: index < wrongs ? 'wrong' : 'right',
      },
    })),
    { kind: 'handed-in' },
    { kind: 'released', by: 'tomas' },
  ];
  return happenings.reduce((sitting, happening, minute) => {
    const taken = accept(sitting, { ...happening, sitting: 's' }, minute * 60_000);
    if (!taken.ok) throw new Error(taken.error);
    return taken.value.sitting;
  }, newSitting(plan));
}

function outcomeOf(sitting: Sitting): 'passed' | 'failed' {
  const marks = givenAnswers(sitting).map(({ item, answer }) => ({
    item,
    earned: rational(answer?.value === 'right' ? 1 : 0),
    possible: rational(1),
  }));
  const result = partResult(marks, written.passMark, sitting.retired);
  return result.ok && result.value.outcome === 'passed' ? 'passed' : 'failed';
}

const triedOn = (on: string, result: Tried['result'], part: PartId = written.id): Tried => ({
  part,
  on: day(on),
  result,
});

describe('truth', () => {
  test('from a failed written part to a certificate and its renewal', () => {
    // Thirty questions at 75 %: seven may be wrong, eight may not.
    expect([7, 8].map((wrongs) => outcomeOf(sat(wrongs)))).toEqual(['passed', 'failed']);

    const failed = triedOn('2026-03-02', outcomeOf(sat(8)));
    const [state] = standingOf(
      scheme,
      { tried: [failed], held: new Map() },
      day('2026-03-05'),
    ).parts;
    expect(state?.state).toEqual({ kind: 'must-wait', from: '2026-03-16', because: 'just-failed' });

    const tried = [
      failed,
      triedOn('2026-03-16', outcomeOf(sat(7))),
      ...scheme.parts.slice(1).map(({ id }) => triedOn('2026-03-18', 'passed', id)),
    ];
    const decided = day('2026-03-25');
    const application: Application = {
      scheme,
      candidate: 'rosa',
      renews: undefined,
      standing: standingOf(scheme, { tried, held: new Map() }, decided),
      evidence: scheme.parts.map(({ id }) => ({
        part: id,
        on: day(id === written.id ? '2026-03-16' : '2026-03-18'),
        isReleased: true,
        examiners: id === written.id ? [] : ['ana'],
        agreement: undefined,
      })),
      involved: [{ person: 'teo', as: 'trainer', on: day('2026-02-01') }],
    };
    const made = (by: string) =>
      decide(application, { verdict: 'grant', by, on: decided, because: '', asks: [] });
    expect([made('teo').ok, made('ana').ok]).toEqual([false, false]);
    const granted = made('delia');
    if (!granted.ok) throw new Error(granted.error.map(({ code }) => code).join(', '));
    const until = granted.value.until!;
    expect(until).toBe('2029-03-25');

    expect(renewalPhase(scheme, until, day('2028-09-25'))).toBe('due');
    const again = scheme.renewal.parts.map(({ part }) => triedOn('2028-10-02', 'passed', part));
    const renewal = renewalStanding(
      scheme,
      { tried: again, held: new Map() },
      until,
      day('2028-10-05'),
    );
    expect(renewal.completeUntil).toBe('2029-10-02');
  });

  test('the hands-on check of every shipped scheme can be passed, and one slip at the bar fails it', () => {
    for (const part of [...content.schemes.values()].flatMap(({ parts }) => parts)) {
      if (part.kind !== 'hands-on') continue;
      const wall = walls.find(
        ({ sequence: { method, site } }) =>
          method.id === part.method &&
          Object.entries(part.site).every(([question, value]) => site[question] === value),
      )!;
      const points = witnessPoints(wall.sequence);
      const outcome = (isSlip: boolean): string => {
        const seen = points.map((point) =>
          isSlip && point.id === 'fasten-bar/done'
            ? ({ point: point.id, kind: 'watched', right: false } as const)
            : right(point),
        );
        const judged = judgedPoints(points, seen);
        if (!judged.ok) throw new Error(judged.error.map(({ code }) => code).join(', '));
        return handsOnResult(judged.value, part.passMark).outcome;
      };
      expect([outcome(false), outcome(true)]).toEqual(['passed', 'failed']);
    }
  });
});
