import fc from 'fast-check';
import { accept, type Accepted, type Refusal } from '#engine/exam/accept.ts';
import { newSitting, type Sitting, type SittingPlan } from '#engine/exam/sitting.ts';
import type { Answer, Happening } from '#engine/exam/sitting-event.ts';

export const minute = 60_000;

/** An hour, and two minutes of grace. */
export const plan: SittingPlan = {
  id: 'sitting-1',
  candidate: 'rosa',
  part: 'knowledge',
  items: ['q1', 'q2', 'q3', 'q4'],
  allowed: 60 * minute,
  grace: 2 * minute,
};

export type Sent = Happening & { readonly sitting: string };

export const sent = (happening: Happening): Sent => ({ ...happening, sitting: plan.id });

export const open: Sent = sent({ kind: 'opened', by: 'ines' });

let ids = 0;
export const answer = (item: string, sequence: number, more: Partial<Answer> = {}): Sent => {
  ids += 1;
  return sent({
    kind: 'answered',
    answer: {
      id: `answer-${ids}`,
      sequence,
      tab: 'a',
      item,
      value: `${item}/${sequence}`,
      ...more,
    },
  });
};

export type Step = readonly [minutes: number, happening: Sent];

/** What each step met with: how it was taken, or why not. */
export function played(steps: readonly Step[]): {
  readonly sitting: Sitting;
  readonly met: readonly (Accepted['as'] | Refusal)[];
} {
  let sitting = newSitting(plan);
  const met = steps.map(([minutes, happening]) => {
    const taken = accept(sitting, happening, minutes * minute);
    if (!taken.ok) return taken.error;
    sitting = taken.value.sitting;
    return taken.value.as;
  });
  return { sitting, met };
}

const person = fc.constantFrom('ines', 'ines', 'tomas', plan.candidate);
const item = fc.constantFrom(...plan.items, ...plan.items, 'q9');
const tab = fc.constantFrom('a', 'b');
const instant = fc.integer({ min: -5, max: 90 }).map((minutes) => minutes * minute);

const anyAnswer: fc.Arbitrary<Answer> = fc.record(
  {
    id: fc.integer({ min: 0, max: 30 }).map((id) => `id-${id}`),
    sequence: fc.integer({ min: 0, max: 12 }),
    tab,
    item,
    value: fc.constantFrom('yes', 'no', ''),
    clientTime: fc.integer(),
  },
  { requiredKeys: ['id', 'sequence', 'tab', 'item', 'value'] },
);

const answered = anyAnswer.map((given): Happening => ({ kind: 'answered', answer: given }));

const anyHappening: fc.Arbitrary<Happening> = fc.oneof(
  { arbitrary: answered, weight: 8 },
  fc.record({ kind: fc.constant('page-shown' as const), item, tab }),
  fc.record({ kind: fc.constantFrom('left-page' as const, 'came-back' as const), tab }),
  fc.record({
    kind: fc.constant('time-granted' as const),
    by: person,
    because: fc.constantFrom('alarm', ' '),
    grant: fc.oneof(
      fc.record({
        kind: fc.constant('more' as const),
        milliseconds: fc.integer({ min: -1, max: minute }),
      }),
      fc.record({ kind: fc.constant('pause' as const), from: instant, to: instant }),
    ),
  }),
  fc.record({
    kind: fc.constant('item-retired' as const),
    by: person,
    because: fc.constant('two right answers'),
    item,
  }),
  fc.constant<Happening>({ kind: 'time-ran-out' }),
);

const anyEnd: fc.Arbitrary<Happening> = fc.oneof(
  fc.constant<Happening>({ kind: 'handed-in' }),
  fc.record({ kind: fc.constant('released' as const), by: person }),
  fc.record({ kind: fc.constant('voided' as const), by: person, because: fc.constant('phone') }),
  fc.record({ kind: fc.constant('opened' as const), by: person }),
);

/** Whatever may be sent, for this sitting or another, in order of the server's time and now and then before it. */
export const anySteps: fc.Arbitrary<readonly Step[]> = fc
  .tuple(
    fc.boolean(),
    fc.array(
      fc.record({
        happening: fc.oneof({ arbitrary: anyHappening, weight: 12 }, anyEnd),
        sitting: fc.constantFrom(...Array<string>(12).fill(plan.id), 'sitting-2'),
        waits: fc.oneof({ arbitrary: fc.nat(2), weight: 9 }, fc.constant(-3)),
      }),
      { maxLength: 60 },
    ),
  )
  .map(([opensFirst, all]) => {
    let now = 0;
    const rest = all.map(({ happening, sitting, waits }): Step => {
      now += waits;
      return [now, { ...happening, sitting }];
    });
    return opensFirst ? [[0, open], ...rest] : rest;
  });
