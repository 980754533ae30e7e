import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addPeriod } from '#engine/calendar.ts';
import { rational } from '#engine/measure/rational.ts';
import type { SchemeId } from '#engine/exam/scheme.ts';
import { decide, type Application, type Proposal } from '#engine/exam/decision.ts';
import { renewalStanding } from '#engine/exam/renewal.ts';
import { standingOf } from '#engine/exam/standing.ts';
import { keptFromExamining } from '#engine/exam/separation.ts';
import { application, day, evidence, id, proposal, scheme, tried } from './small-scheme.ts';

const refusedFor = (changed: Partial<Application>, how: Partial<Proposal> = {}) => {
  const decision = decide({ ...application, ...changed }, proposal(how));
  return decision.ok ? [] : decision.error;
};

const lacking = (code: string, part: string) => [{ code: 'INCOMPLETE', lack: { code, part } }];

describe('truth', () => {
  test('on complete evidence somebody else grants it, for three years', () => {
    const decision = decide(application, proposal());
    expect(decision.ok && decision.value).toMatchObject({
      scheme: 'installer',
      candidate: 'rosa',
      verdict: 'grant',
      by: 'delia',
      on: '2026-03-20',
      until: '2029-03-20',
    });
  });

  test('nobody decides on themselves', () => {
    expect(refusedFor({}, { by: 'rosa' })).toEqual([
      { code: 'DECIDER_KEPT_OUT', why: { code: 'IS_CANDIDATE' } },
    ]);
  });

  test('who trained the candidate keeps out for two years, and may decide on the day after', () => {
    const by = { by: 'teo' };
    expect(refusedFor({}, by)).toEqual([
      { code: 'DECIDER_KEPT_OUT', why: { code: 'TRAINED', from: '2028-02-20' } },
    ]);
    expect(refusedFor({}, { ...by, on: day('2028-02-19') })).toHaveLength(1);
    expect(refusedFor({}, { ...by, on: day('2028-02-20') })).toEqual([]);
  });

  test('who examined keeps out though only the evidence names them', () => {
    expect(refusedFor({}, { by: 'ana' })).toEqual([
      { code: 'DECIDER_KEPT_OUT', why: { code: 'EXAMINED', from: '2027-03-09' } },
    ]);
  });

  test('the last time counts, and not the first', () => {
    const involved = ['2024-01-01', '2026-03-01', '2025-01-01'].map((on) => ({
      person: 'teo',
      as: 'trainer' as const,
      on: day(on),
    }));
    expect(
      keptFromExamining(scheme, { candidate: 'rosa', involved }, 'teo', day('2026-03-20')),
    ).toEqual([{ code: 'TRAINED', from: '2028-03-01' }]);
  });

  test('an examination by the trainer is no evidence', () => {
    const involved = [{ person: 'ana', as: 'trainer' as const, on: day('2025-06-01') }];
    expect(refusedFor({ involved })).toEqual([
      { code: 'EXAMINER_KEPT_OUT', examiner: 'ana', why: { code: 'TRAINED', from: '2027-06-01' } },
    ]);
  });

  test('whoever trains a person only after examining them has examined well', () => {
    const involved = [{ person: 'ana', as: 'trainer' as const, on: day('2026-03-15') }];
    expect(refusedFor({ involved })).toEqual([]);
  });

  test('nothing is granted while a part is lacking, and the part is named', () => {
    const standing = standingOf(
      scheme,
      { tried: [tried('knowledge', '2026-03-02', 'passed')], held: new Map() },
      day('2026-03-20'),
    );
    expect(refusedFor({ standing })).toEqual(lacking('NOT_PASSED', 'hand'));
  });

  test('a certificate that is required has to be held', () => {
    const needs = { ...scheme, requires: ['first' as SchemeId] };
    const held = { tried: [], held: new Map() };
    const standing = {
      ...application.standing,
      lacks: standingOf(needs, held, day('2026-03-20')).lacks,
    };
    expect(refusedFor({ scheme: needs, standing })).toEqual([
      { code: 'INCOMPLETE', lack: { code: 'CERTIFICATE', scheme: 'first' } },
    ]);
  });

  const [first, second] = [evidence[0]!, evidence[1]!];
  test.each([
    ['NO_EVIDENCE', 'hand', [first]],
    ['NO_EVIDENCE', 'hand', [first, { ...second, on: day('2026-03-08') }]],
    ['NOT_RELEASED', 'knowledge', [{ ...first, isReleased: false }, second]],
    ['EXAMINERS', 'hand', [first, { ...second, examiners: ['ana', 'ana'] }]],
    ['AGREEMENT', 'hand', [first, { ...second, agreement: rational(79, 100) }]],
    ['AGREEMENT', 'hand', [first, { ...second, agreement: undefined }]],
  ])('%s: %s', (code, part, changed) => {
    expect(refusedFor({ evidence: changed })).toEqual(lacking(code, part));
  });

  test('against the candidate nothing is decided without a reason', () => {
    expect(refusedFor({}, { verdict: 'refuse', because: ' ' })).toEqual([{ code: 'NO_REASON' }]);
    expect(refusedFor({}, { verdict: 'refuse', because: 'the sitting was not her own' })).toEqual(
      [],
    );
  });

  test('whoever asks for more says of which part', () => {
    const asks = { verdict: 'ask-for-more', because: 'the photographs are dark' } as const;
    expect(refusedFor({}, asks)).toEqual([{ code: 'ASKS_NOTHING' }]);
    expect(refusedFor({}, { ...asks, asks: [id('feet')] })).toEqual([
      { code: 'UNKNOWN_PART', part: 'feet' },
    ]);
    expect(refusedFor({}, { ...asks, asks: [id('hand')] })).toEqual([]);
  });

  test('a refusal grants no day', () => {
    const decision = decide(application, proposal({ verdict: 'refuse', because: 'a reason' }));
    expect(decision.ok && decision.value.until).toBeUndefined();
  });

  test('a renewal asks for the parts of the renewal alone, and goes on from the old end', () => {
    const renews = day('2026-08-01');
    const history = { tried: [tried('knowledge', '2026-03-02', 'passed')], held: new Map() };
    const decision = decide(
      {
        ...application,
        renews,
        standing: renewalStanding(scheme, history, renews, day('2026-03-20')),
        evidence: [first],
      },
      proposal(),
    );
    expect(decision.ok && decision.value.until).toBe('2029-08-01');
  });
});

describe('laws', () => {
  test('no decision is ever made by somebody who trained or examined within the periods', () => {
    const people = ['rosa', 'teo', 'ana', 'delia'];
    const involvement = fc.record({
      person: fc.constantFrom(...people),
      as: fc.constantFrom('trainer' as const, 'examiner' as const),
      on: fc.nat(1500).map((count) => addPeriod(day('2022-03-01'), { count, unit: 'days' })),
    });
    fc.assert(
      fc.property(
        fc.array(involvement, { maxLength: 5 }),
        fc.constantFrom(...people),
        fc.constantFrom('grant' as const, 'refuse' as const),
        (involved, by, verdict) => {
          const made = decide(
            { ...application, involved },
            proposal({ by, verdict, because: 'so' }),
          );
          if (!made.ok) return;
          expect(by).not.toBe('rosa');
          const { trainedDecides, examinedDecides } = scheme.separation;
          for (const one of involved.filter(({ person }) => person === by)) {
            const period = one.as === 'trainer' ? trainedDecides : examinedDecides;
            expect(addPeriod(one.on, period) <= made.value.on).toBe(true);
          }
        },
      ),
    );
  });
});
