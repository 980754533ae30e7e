import { describe, expect, test } from 'vitest';
import { decideAppeal, type Appeal } from '#engine/exam/appeal.ts';
import { decide, type Decision, type Proposal } from '#engine/exam/decision.ts';
import type { SchemeId } from '#engine/exam/scheme.ts';
import { application, day, proposal } from './small-scheme.ts';

function decided(how: Partial<Proposal>): Decision {
  const decision = decide(application, proposal(how));
  if (!decision.ok) throw new Error(decision.error.map(({ code }) => code).join(', '));
  return decision.value;
}

const refusal = decided({ verdict: 'refuse', because: 'the weather log is missing' });
const appeal: Appeal = { by: 'rosa', on: day('2026-04-01') };
const again = proposal({ by: 'ester', on: day('2026-04-10'), because: 'the log was found' });

const refusedFor = (
  changes: { first?: Decision; appeal?: Partial<Appeal>; proposal?: Partial<Proposal> } = {},
) => {
  const outcome = decideAppeal(
    application,
    changes.first ?? refusal,
    { ...appeal, ...changes.appeal },
    { ...again, ...changes.proposal },
  );
  return outcome.ok ? [] : outcome.error;
};

describe('truth', () => {
  test('another decider changes a refusal into a grant', () => {
    const outcome = decideAppeal(application, refusal, appeal, again);
    expect(outcome.ok && outcome.value).toMatchObject({
      outcome: 'changed',
      decision: { verdict: 'grant', by: 'ester', until: '2029-04-10' },
    });
  });

  test('or lets it stand', () => {
    const outcome = decideAppeal(application, refusal, appeal, {
      ...again,
      verdict: 'refuse',
      because: 'the log shows rain',
    });
    expect(outcome.ok && outcome.value.outcome).toBe('stands');
  });

  test('not the one who decided before', () => {
    expect(refusedFor({ proposal: { by: 'delia' } })).toEqual([{ code: 'SAME_DECIDER' }]);
  });

  test('nor anybody who trained or examined the candidate', () => {
    expect(refusedFor({ proposal: { by: 'teo' } })).toEqual([
      { code: 'DECIDER_KEPT_OUT', why: { code: 'TRAINED', from: '2028-02-20' } },
    ]);
  });

  test('up to the thirtieth day, that day included', () => {
    const on = (date: string) =>
      refusedFor({ appeal: { on: day(date) }, proposal: { on: day('2026-05-20') } });
    expect(on('2026-04-19')).toEqual([]);
    expect(on('2026-04-20')).toEqual([{ code: 'TOO_LATE', until: '2026-04-19' }]);
  });

  test('by the candidate, after the decision and before the appeal is decided', () => {
    expect(refusedFor({ appeal: { by: 'teo' } })).toEqual([{ code: 'NOT_BY_CANDIDATE' }]);
    expect(refusedFor({ appeal: { on: day('2026-03-19') } })).toEqual([
      { code: 'BEFORE_DECISION' },
    ]);
    expect(refusedFor({ proposal: { on: day('2026-03-31') } })).toEqual([
      { code: 'BEFORE_DECISION' },
    ]);
  });

  test('a grant gives nothing to appeal against', () => {
    expect(refusedFor({ first: decided({}) })).toEqual([{ code: 'NOTHING_TO_APPEAL' }]);
  });

  test('of another candidate or scheme, it is another case', () => {
    expect(refusedFor({ first: { ...refusal, candidate: 'luis' } })).toEqual([
      { code: 'OF_ANOTHER_CASE' },
    ]);
    expect(refusedFor({ first: { ...refusal, scheme: 'other' as SchemeId } })).toEqual([
      { code: 'OF_ANOTHER_CASE' },
    ]);
  });

  test('a changed decision says why, too', () => {
    expect(refusedFor({ proposal: { because: '' } })).toEqual([{ code: 'NO_REASON' }]);
    expect(refusedFor({ proposal: { verdict: 'refuse', because: '' } })).toEqual([
      { code: 'NO_REASON' },
    ]);
  });
});
