import { isoDateFrom, type IsoDate, type Period, type PeriodUnit } from '#engine/calendar.ts';
import { quantity } from '#engine/measure/conversion.ts';
import { rational } from '#engine/measure/rational.ts';
import type { MethodId, SourceId } from '#engine/method/method.ts';
import type { Application, Proposal } from '#engine/exam/decision.ts';
import type { Evidence } from '#engine/exam/evidence.ts';
import type { PartId, Scheme, SchemeId } from '#engine/exam/scheme.ts';
import { standingOf, type Tried } from '#engine/exam/standing.ts';

export const day = (text: string): IsoDate => {
  const date = isoDateFrom(text);
  if (!date.ok) throw new Error(text);
  return date.value;
};

const of = (count: number, unit: PeriodUnit): Period => ({ count, unit });
const said = { en: 'said', es: 'dicho' };
export const id = (text: string): PartId => text as PartId;

const common = {
  title: said,
  evidences: said,
  passMark: quantity(75, '%'),
  time: quantity(1, 'h'),
};

/** Two parts; three tries a year, two weeks apart; three years; renewed by a shorter written part. */
export const scheme: Scheme = {
  id: 'installer' as SchemeId,
  title: said,
  purpose: said,
  note: said,
  covers: new Map([['wall' as MethodId, new Map()]]),
  requires: [],
  parts: [
    { ...common, kind: 'written', id: id('knowledge'), blueprint: new Map([['wall', 8]]) },
    {
      ...common,
      kind: 'hands-on',
      id: id('hand'),
      method: 'wall' as MethodId,
      site: {},
      examiners: 2,
      agreement: quantity(80, '%'),
    },
  ],
  keeps: of(12, 'months'),
  tries: { most: 3, within: of(12, 'months'), wait: of(14, 'days') },
  validity: of(3, 'years'),
  renewal: {
    opens: of(6, 'months'),
    closes: of(3, 'months'),
    parts: [{ part: id('knowledge'), blueprint: new Map([['wall', 4]]) }],
  },
  separation: {
    trainedExamines: of(24, 'months'),
    trainedDecides: of(24, 'months'),
    examinedDecides: of(12, 'months'),
  },
  appeal: of(30, 'days'),
  source: 'common-practice' as SourceId,
};

export const tried = (part: string, on: string, result: Tried['result']): Tried => ({
  part: id(part),
  on: day(on),
  result,
});

const passes = [tried('knowledge', '2026-03-02', 'passed'), tried('hand', '2026-03-09', 'passed')];

export const evidence: readonly Evidence[] = [
  {
    part: id('knowledge'),
    on: day('2026-03-02'),
    isReleased: true,
    examiners: [],
    agreement: undefined,
  },
  {
    part: id('hand'),
    on: day('2026-03-09'),
    isReleased: true,
    examiners: ['ana', 'beto'],
    agreement: rational(9, 10),
  },
];

/** Everything passed, by a candidate whom Teo trained and Ana and Beto examined. */
export const application: Application = {
  scheme,
  candidate: 'rosa',
  renews: undefined,
  standing: standingOf(scheme, { tried: passes, held: new Map() }, day('2026-03-20')),
  evidence,
  involved: [{ person: 'teo', as: 'trainer', on: day('2026-02-20') }],
};

export const proposal = (changed: Partial<Proposal> = {}): Proposal => ({
  verdict: 'grant',
  by: 'delia',
  on: day('2026-03-20'),
  because: '',
  asks: [],
  ...changed,
});
