/**
 * A year of attempts of the invented company by simulated learners, who get better with practice. The
 * model is that of the engine's `simulation`; how often people practise is this project's own choice.
 */
import type { Content } from '#engine/compile/content.ts';
import { helpCost } from '#engine/marking/guidance.ts';
import type { MethodId } from '#engine/method/method.ts';
import { allSites } from '#engine/method/site.ts';
import { type Sequence, sequenceOf } from '#engine/method/sequence.ts';
import { pick, type Random, randomFrom, whole } from '#engine/random.ts';
import { answersOf } from '#engine/simulation/answers-of.ts';
import { attemptOf } from '#engine/simulation/attempt-of.ts';
import type { FamilyId } from '#engine/takeoff/family.ts';
import { instanceOf } from '#engine/takeoff/instance.ts';
import { takeoffOf } from '#engine/takeoff/takeoff.ts';
import { uuid7, uuidBytes } from '#engine/uuid.ts';
import type { TopicId } from '#engine/written/question.ts';
import type { Sent } from '../attempts/sent.ts';
import { writtenRun } from './written-answers.ts';

const day = 24 * 60 * 60 * 1000;

/** Logits that each attempt at the same kind of work gains. */
const learning = 0.25;

export type DemoTask =
  | { readonly kind: 'mockup'; readonly method: MethodId }
  | { readonly kind: 'takeoff'; readonly family: FamilyId }
  | { readonly kind: 'written'; readonly topic: TopicId; readonly questions: number };

/** Assigned work that somebody is to do between two instants. */
export type DemoWork = DemoTask & {
  readonly id: string;
  readonly from: number;
  readonly until: number;
};

export type DemoLearner = {
  readonly seed: string;
  readonly ability: number;
  readonly works: readonly DemoWork[];
  /** In milliseconds: nothing is done from then on. */
  readonly left: number;
};

type DemoAttempt = { readonly sent: Sent; readonly at: string };

/** One after the other as they were made, in the year before the day that begins at `today` (milliseconds). */
export function* demoAttempts(
  content: Content,
  { seed, ability, works, left }: DemoLearner,
  today: number,
): Generator<DemoAttempt> {
  const random = randomFrom(`${seed}/attempts`);
  const practised = new Map<string, number>();
  const planned = [...ownPractice(content, random, today), ...assigned(random, works, today)]
    .filter(({ at }) => at < left)
    .toSorted((a, b) => a.at - b.at);
  for (const { at, task, work } of planned) {
    const about = aboutOf(task);
    const before = practised.get(about) ?? 0;
    practised.set(about, before + 1);
    const learner = { ability, learning, practised: before };
    const name = `${seed}/${at}`;
    // Only what was built without hints counts for work.
    const isOwn = work !== undefined || whole(random, 1, 4) > 1;
    const made =
      task.kind === 'mockup'
        ? wall(content, task.method, { learner, isOwn }, name, random, at)
        : task.kind === 'written'
          ? questions(content, task, ability + learning * before, name, random, at)
          : problem(content, task.family, learner, name, random, at);
    if (made) yield { sent: { ...made, work }, at: new Date(at).toISOString() };
  }
}

function aboutOf(task: DemoTask): string {
  if (task.kind === 'written') return task.topic;
  return task.kind === 'mockup' ? task.method : task.family;
}

function questions(
  content: Content,
  task: Extract<DemoTask, { readonly kind: 'written' }>,
  ability: number,
  seed: string,
  random: Random,
  at: number,
): Sent | undefined {
  const stamp = { id: seed, at: new Date(at).toISOString(), seed };
  const kept = writtenRun(content, task, ability, stamp);
  return kept && { id: idAt(at, random), work: undefined, kind: 'written', kept };
}

type Planned = { readonly at: number; readonly task: DemoTask; readonly work: string | undefined };

function ownPractice(content: Content, random: Random, today: number): readonly Planned[] {
  const [methods, families] = [[...content.methods.keys()], [...content.takeoffs.keys()]];
  return Array.from({ length: whole(random, 6, 26) }, () => ({
    at: today - whole(random, 1, 364) * day + workingHour(random),
    task:
      whole(random, 1, 10) <= 6
        ? { kind: 'mockup', method: pick(random, methods) }
        : { kind: 'takeoff', family: pick(random, families) },
    work: undefined,
  }));
}

/** Of ten, eight get to it; these try once to three times, none after the day before today. */
function assigned(random: Random, works: readonly DemoWork[], today: number): readonly Planned[] {
  return works.flatMap((work) => {
    const tries = whole(random, 1, 10) <= 8 ? whole(random, 1, 3) : 0;
    const days = Math.floor((Math.min(work.until, today) - work.from) / day) - 1;
    if (days < 0) return [];
    return Array.from({ length: tries }, () => ({
      at: work.from + whole(random, 0, days) * day + workingHour(random),
      task: work,
      work: work.id,
    }));
  });
}

/** The working day of the invented company, in UTC: it lies in the west. */
const workingHour = (random: Random): number => whole(random, 13 * 60, 22 * 60) * 60_000;

type Learner = Parameters<typeof attemptOf>[1];

const idAt = (at: number, random: Random): string =>
  uuid7(
    at,
    Uint8Array.from({ length: uuidBytes }, () => whole(random, 0, 255)),
  );

function wall(
  content: Content,
  id: MethodId,
  { learner, isOwn }: { readonly learner: Learner; readonly isOwn: boolean },
  seed: string,
  random: Random,
  at: number,
): Sent | undefined {
  const sequence = anyWall(content, id, random);
  if (!sequence) return undefined;
  const help = isOwn ? [] : [pick(random, Object.keys(helpCost) as 'refusal'[])];
  const finished = new Date(at).toISOString();
  const attempt = attemptOf(sequence, learner, seed);
  return {
    id: idAt(at, random),
    work: undefined,
    kind: 'mockup',
    kept: {
      id: seed,
      finished,
      mode: isOwn ? 'own' : 'guided',
      seed,
      help,
      revision: content.revision,
      score: 0,
      outcome: 'rework',
      attempt,
    },
  };
}

function anyWall(content: Content, id: MethodId, random: Random): Sequence | undefined {
  const method = content.methods.get(id);
  const sheet = method && content.dataSheets.get(method.dataSheet);
  if (!sheet) return undefined;
  const found = sequenceOf(method, sheet, pick(random, allSites(method.site)));
  return found.ok ? found.value : undefined;
}

function problem(
  content: Content,
  id: FamilyId,
  learner: Learner,
  seed: string,
  random: Random,
  at: number,
): Sent | undefined {
  const family = content.takeoffs.get(id);
  const sheet = family && content.dataSheets.get(family.dataSheet);
  const takeoff = sheet && takeoffOf(family, sheet);
  const instance = takeoff?.ok ? instanceOf(takeoff.value, seed) : undefined;
  if (!instance?.ok) return undefined;
  const answers = answersOf(instance.value, learner, seed);
  return {
    id: idAt(at, random),
    work: undefined,
    kind: 'takeoff',
    kept: {
      id: seed,
      at: new Date(at).toISOString(),
      family: id,
      seed,
      form: 'entry',
      revision: content.revision,
      sheetRevision: content.sheetRevisions.get(sheet!.id) ?? '',
      answers: [...answers].map(([part, written]) => ({
        part,
        tries: [written],
        verdict: 'wrong',
        slips: [],
        followed: false,
        credit: 0,
        shown: false,
        closed: true,
      })),
    },
  };
}
