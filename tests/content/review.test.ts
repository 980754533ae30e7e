import { describe, expect, it } from 'vitest';
import { attemptFaultCodes, type AttemptFile } from '#engine/marking/attempt-file.ts';
import { attemptFrom, sequenceFrom } from '#engine/marking/attempt-from.ts';
import { reportOf } from '#engine/marking/report.ts';
import { review } from '#engine/marking/review.ts';
import { content } from './walls.ts';

const wall = (() => {
  const sequence = sequenceFrom({ method: 'base-of-wall', site: {} }, content);
  if (!sequence.ok) throw new Error(sequence.error[0]?.message);
  return sequence.value;
})();
const usual = wall.steps.map(({ id }) => id as string);

const built = (change: (steps: string[]) => string[] = (steps) => steps): AttemptFile => ({
  method: 'base-of-wall',
  site: {},
  steps: change([...usual]).map((step) => ({ step })),
});

const withCard = (step: string, more: object, from = built()): AttemptFile => ({
  ...from,
  steps: from.steps.map((card) => (card.step === step ? { ...card, ...more } : card)),
});

const marked = (file: AttemptFile) => {
  const attempt = attemptFrom(file, content);
  if (!attempt.ok) throw new Error(JSON.stringify(attempt.error));
  return reportOf(attempt.value, review(attempt.value));
};

const refused = (input: unknown) => {
  const attempt = attemptFrom(input, content);
  return attempt.ok ? [] : attempt.error.map(({ code, path }) => `${code} ${path}`);
};

const moved = (step: string, to: (steps: readonly string[]) => number) => (steps: string[]) => {
  const rest = steps.filter((other) => other !== step);
  return rest.toSpliced(to(rest), 0, step);
};

describe('a review', () => {
  it('accepts the method as written', () => {
    expect(marked(built())).toMatchObject({ score: 100, outcome: 'accept', deviations: [] });
  });

  it('names the bar screwed on before rolling, by how far, and the constraint it broke', () => {
    const { deviations, outcome, nearestOrder } = marked(
      built(moved('fasten-bar', (steps) => steps.indexOf('roll-wall'))),
    );
    expect(deviations).toMatchObject([
      {
        kind: 'out-of-order',
        severity: 'critical',
        broken: [{ before: 'roll-wall', after: 'fasten-bar' }],
      },
    ]);
    expect(outcome).not.toBe('accept');
    expect(nearestOrder.join()).toMatch(/roll-wall,.*fasten-bar/);
  });

  it('costs more the farther a step strays', () => {
    const early = (places: number) =>
      marked(built(moved('seal-bar', (steps) => steps.indexOf('fasten-bar') - places)));
    const [near, far] = [early(0), early(6)];
    expect(near.deviations[0]).toMatchObject({ kind: 'out-of-order', direction: 'early' });
    expect(far.score).toBeLessThan(near.score);
  });

  it('calls a wait cut short rushed, and names what came too soon', () => {
    const clock = (drying: number) =>
      marked(
        withCard('tape-top-edge', { minute: 10 + drying }, withCard('prime-wall', { minute: 10 })),
      );
    expect(clock(1).deviations).toMatchObject([
      { kind: 'rushed', step: 'prime-wall', next: 'tape-top-edge', waited: '60 s' },
    ]);
    expect(clock(3).deviations).toEqual([]);
  });

  it('waits longer on a cold morning', () => {
    const cold = {
      ...built((steps) => steps.toSpliced(1, 0, 'condition-materials')),
      site: { weather: 'cold' },
    };
    const timed = withCard(
      'tape-top-edge',
      { minute: 3 },
      withCard('prime-wall', { minute: 0 }, cold),
    );
    expect(marked(timed).deviations).toMatchObject([{ kind: 'rushed', step: 'prime-wall' }]);
  });

  it('holds a setting to the data sheet, bounds included, and does not judge one not given', () => {
    const turnUp = (height: string) =>
      marked(withCard('snap-line', { settings: { 'turn-up': height } })).deviations;
    expect(turnUp('8 in')).toEqual([]);
    expect(turnUp('0.2032 m')).toEqual([]);
    expect(turnUp('7 in')).toMatchObject([
      { kind: 'out-of-tolerance', step: 'snap-line', setting: 'turn-up', severity: 'critical' },
    ]);
  });

  it('costs more the farther a setting is out', () => {
    const score = (spacing: string) =>
      marked(withCard('fasten-bar', { settings: { spacing } })).score;
    expect(score('7 in')).toBe(100);
    expect(score('14 in')).toBeLessThan(score('9 in'));
  });

  it('tells decoys, steps of another wall and steps done again apart', () => {
    const { deviations } = marked(
      built((steps) => [...steps, 'nail-toe', 'set-drip-edge', 'seal-bar']),
    );
    expect(deviations.map(({ kind, step }) => `${kind} ${step}`)).toEqual([
      'not-on-this-wall nail-toe',
      'not-on-this-wall set-drip-edge',
      'done-again seal-bar',
    ]);
  });

  it('ties each leak to the items that let the water in', () => {
    const { leaks, repair, deviations } = marked(
      built((steps) => steps.filter((step) => step !== 'lay-mastic')),
    );
    expect(deviations).toMatchObject([{ kind: 'left-out', step: 'lay-mastic' }]);
    expect(leaks.length).toBeGreaterThan(0);
    expect(leaks.every((leak) => leak.deviations.includes(0))).toBe(true);
    expect(repair).toEqual([0]);
  });

  it('tears out what is wrong and covered, and only reworks what can still be reached', () => {
    const without = (left: string) =>
      marked(built((steps) => steps.filter((step) => step !== left))).outcome;
    expect(without('prime-wall')).toBe('tear-out');
    expect(without('seal-bar')).toBe('rework');
  });

  it('gives each item the reason and the rework that the content states for it', () => {
    const file = built((steps) => [...steps.filter((step) => step !== 'lay-mastic'), 'nail-toe']);
    const { method } = wall;
    const stepOf = (step: string) => method.steps.find(({ id }) => id === step)!;
    const clocked = withCard(
      'tape-top-edge',
      { minute: 1 },
      withCard('prime-wall', { minute: 0 }, file),
    );
    const set = withCard('snap-line', { settings: { 'turn-up': '7 in' } }, clocked);
    const { deviations } = marked({
      ...set,
      steps: [
        ...set.steps.slice(1),
        set.steps[0]!,
        { step: 'set-drip-edge' },
        { step: 'seal-bar' },
      ],
    });
    const said = new Map(deviations.map((each) => [`${each.kind} ${each.step}`, each]));
    const first = usual[0]!;
    const constraint = wall.constraints
      .filter(({ before }) => wall.steps[before]!.id === first)
      .find(({ severity }) => severity === said.get(`out-of-order ${first}`)?.severity)!;
    const decoy = method.decoys.find(({ id }) => id === 'nail-toe')!;
    const elsewhere = stepOf('set-drip-edge');
    const expected: Readonly<Record<string, readonly [because: unknown, rework: unknown]>> = {
      'left-out lay-mastic': [stepOf('lay-mastic').reason, stepOf('lay-mastic').rework],
      [`out-of-order ${first}`]: [constraint.because, stepOf(first).rework],
      'rushed prime-wall': [stepOf('prime-wall').wait!.because, stepOf('prime-wall').rework],
      'out-of-tolerance snap-line': [
        stepOf('snap-line').settings.find(({ id }) => id === 'turn-up')!.because,
        stepOf('snap-line').rework,
      ],
      'not-on-this-wall nail-toe': [decoy.because, decoy.rework],
      // A step of another wall covers nothing here, and is taken off in place.
      'not-on-this-wall set-drip-edge': [
        expect.objectContaining({ en: expect.stringContaining('another kind of wall') as string }),
        { ...elsewhere.rework, undo: 'in-place' },
      ],
      'done-again seal-bar': [
        expect.objectContaining({ en: expect.stringContaining('costs time') as string }),
        stepOf('seal-bar').rework,
      ],
    };
    expect([...said.keys()].sort()).toEqual(Object.keys(expected).sort());
    for (const [item, [because, rework]] of Object.entries(expected)) {
      expect([item, said.get(item)?.because, said.get(item)?.rework]).toEqual([
        item,
        because,
        rework,
      ]);
    }
  });

  it('is the same every time', () => {
    const file = built((steps) => [...steps].reverse());
    expect(marked(file)).toEqual(marked(structuredClone(file)));
  });
});

describe('an attempt that cannot be read', () => {
  const step = { step: 'snap-line' };
  const base = { method: 'base-of-wall', site: {}, steps: [step] };

  const cases: readonly (readonly [string, unknown])[] = [
    ['NOT_AN_ATTEMPT ', [base]],
    ['MISSING_FIELD steps', { method: 'base-of-wall', site: {} }],
    ['UNKNOWN_FIELD stepps', { ...base, stepps: [] }],
    ['WRONG_TYPE method', { ...base, method: 7 }],
    ['UNKNOWN_METHOD method', { ...base, method: 'base-of-house' }],
    ['UNKNOWN_METHOD method', { ...base, method: '__proto__' }],
    ['UNKNOWN_DATA_SHEET dataSheet', { ...base, dataSheet: 'none' }],
    ['UNKNOWN_SITE_QUESTION site.colour', { ...base, site: { colour: 'red' } }],
    ['UNKNOWN_SITE_VALUE site.joint', { ...base, site: { joint: 'glued' } }],
    ['UNKNOWN_STEP steps[1].step', { ...base, steps: [step, { step: 'snap-lime' }] }],
    [
      'UNKNOWN_SETTING steps[0].settings.height',
      { ...base, steps: [{ ...step, settings: { height: '8 in' } }] },
    ],
    [
      'BAD_QUANTITY steps[0].settings.turn-up',
      { ...base, steps: [{ ...step, settings: { 'turn-up': '8 min' } }] },
    ],
    ['BAD_MINUTE steps[0].minute', { ...base, steps: [{ ...step, minute: -1 }] }],
    [
      'CLOCK_RUNS_BACK steps[1].minute',
      {
        ...base,
        steps: [
          { ...step, minute: 5 },
          { step: 'prime-wall', minute: 4 },
        ],
      },
    ],
    ['TOO_MANY_CARDS steps', { ...base, steps: Array.from({ length: 501 }, () => step) }],
  ];

  it.each(cases)('%s', (expected, input) => {
    expect(refused(input)).toEqual([expected]);
  });

  it('is told every fault at once', () => {
    expect(refused({ ...base, site: { joint: 'glued', edge: 'soft' } })).toHaveLength(2);
    expect(refused({ ...base, steps: [{ step: 'a' }, { step: 'b' }] })).toHaveLength(2);
  });

  it('has a case here for every code but unsound content, which the compiler refuses', () => {
    const tried = new Set(cases.map(([expected]) => expected.split(' ')[0]));
    expect([...tried].sort()).toEqual(
      attemptFaultCodes.filter((code) => code !== 'UNSOUND_CONTENT').sort(),
    );
  });
});
