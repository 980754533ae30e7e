import type { KeptAttempt } from '#engine/marking/kept-attempt.ts';
import { approximate } from '#engine/measure/rational.ts';
import { formatExact } from '#engine/measure/format-exact.ts';
import { lineUp } from '#engine/method/line-up.ts';
import { middleOf } from '#engine/method/rule.ts';
import type { SequenceStep } from '#engine/method/sequence.ts';
import type { FamilyId } from '#engine/takeoff/family.ts';
import { instanceOf } from '#engine/takeoff/instance.ts';
import type { KeptProblem } from '#engine/takeoff/kept-problem.ts';
import { writeAnswer } from '#engine/takeoff/problem.ts';
import { takeoffOf } from '#engine/takeoff/takeoff.ts';
import { freshId } from '#server/fresh-id.ts';
import { content, type Wall, walls } from '../../content/walls.ts';
import { at } from './company.ts';

export { content };

const settingsOf = ({ asks }: SequenceStep) =>
  Object.fromEntries(
    asks.map(({ id, sheetNumber, rule }) => [id, formatExact(sheetNumber.aim ?? middleOf(rule))]),
  );

const minutesOf = ({ dries }: SequenceStep): number =>
  dries ? Math.ceil(approximate(dries.least.value) / 60) : 0;

/** A wall built rightly, or backwards; what the browser made of it is nonsense on purpose. */
export function keptWall(isRight = true, wall: Wall = walls[0]!): KeptAttempt {
  const { sequence } = wall;
  const order = lineUp(sequence.order, [...sequence.steps.keys()]);
  let minute = 0;
  const steps = (isRight ? order : order.toReversed()).map((place) => {
    const step = sequence.steps[place]!;
    const card = { step: step.id, settings: settingsOf(step), minute };
    minute += minutesOf(step);
    return card;
  });
  return {
    id: freshId(),
    finished: at,
    mode: 'own',
    seed: '1',
    help: [],
    revision: 'as-played',
    score: 12.3,
    outcome: 'tear-out',
    attempt: { method: sequence.method.id, site: sequence.site, steps },
  };
}

/** A problem whose every part is answered rightly, or not at all. */
export function keptProblem(family: string, seed: string, isRight = true): KeptProblem {
  const found = content.takeoffs.get(family as FamilyId)!;
  const takeoff = takeoffOf(found, content.dataSheets.get(found.dataSheet)!);
  const instance = takeoff.ok ? instanceOf(takeoff.value, seed) : undefined;
  if (!instance?.ok) throw new Error('No such problem.');
  return {
    id: freshId(),
    at,
    family,
    seed,
    form: 'entry',
    revision: 'as-played',
    sheetRevision: 'as-played',
    answers: instance.value.parts.map(({ part, right }) => ({
      part: part.id,
      tries: isRight ? [{ text: writeAnswer(part.answer, right, 'en') }] : [],
      verdict: 'right',
      slips: [],
      followed: false,
      credit: 1,
      shown: !isRight,
      closed: true,
    })),
  };
}
