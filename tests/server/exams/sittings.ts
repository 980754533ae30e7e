import { keyTo } from '#engine/written/key.ts';
import { posed } from '#engine/written/posed.ts';
import type { Question } from '#engine/written/question.ts';
import type { Move, WallAnswer } from '#engine/marking/moves.ts';
import { formatExact } from '#engine/measure/format-exact.ts';
import { attemptOf } from '#engine/simulation/attempt-of.ts';
import type { Part } from '#engine/takeoff/family.ts';
import type { Amount } from '#engine/takeoff/instance.ts';
import { writeAnswer } from '#engine/takeoff/problem.ts';
import type { ProblemAnswer } from '#engine/takeoff/problem-answer.ts';
import { shelfOf } from '#server/attempts/shelf.ts';
import type { Database } from '#server/database/open-database.ts';
import { openLedger } from '#server/exams/happenings.ts';
import { itemKey } from '#server/exams/item-key.ts';
import { wallFor } from '#server/exams/mock-up-part.ts';
import { keptPlan, type KeptPlan } from '#server/exams/plan.ts';
import { setUpSitting } from '#server/exams/set-up.ts';
import { enterCode, makeStartCode } from '#server/exams/start-code.ts';
import { problemFor } from '#server/exams/takeoff-part.ts';
import { receive } from '#server/exams/told.ts';
import { questionsOf } from '#server/exams/written-bank.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Act } from '#server/people/member.ts';
import { actAt, content, opened, type Staff } from './candidate.ts';

/** A sitting that waits for its code. */
export async function waiting(records: Database, staff: Staff, part = 'knowledge') {
  const application = await opened(records.db, staff);
  const made = await setUpSitting(records.db, staff.examiner, content, { application, part });
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  return { application, id: made.value };
}

/** One that is begun. */
export async function begun(records: Database, staff: Staff, part = 'knowledge') {
  const { application, id } = await waiting(records, staff, part);
  const code = await makeStartCode(records, staff.examiner, id);
  if (!code.ok) throw new Error(code.error);
  const entered = await enterCode(records, staff.candidate, id, code.value);
  if (!entered.ok) throw new Error(JSON.stringify(entered.error));
  return { application, id, plan: await planIn(records, id) };
}

export async function planIn({ db }: Database, id: string): Promise<KeptPlan> {
  const row = await db
    .selectFrom('sitting')
    .select('plan')
    .where('id', '=', id)
    .executeTakeFirstOrThrow();
  return keptPlan(row);
}

export const questionAt = (plan: KeptPlan, place: number): Question =>
  questionsOf(content).get(plan.items[place - 1]!)!;

/** What is right, in the form in which it is sent. */
export function rightAnswer(question: Question): object {
  const key = keyTo(question, shelfOf(content))!;
  switch (key.kind) {
    case 'choose-one':
      return { kind: key.kind, choice: key.right };
    case 'choose-all':
      return { kind: key.kind, choices: key.right };
    case 'order':
      return { kind: key.kind, steps: key.right };
    case 'number':
      return { kind: key.kind, text: numberFor(question) };
    case 'find-fault':
      return { kind: key.kind, zone: key.zones[0], fault: key.fault, card: key.cards[0] };
  }
}

function numberFor(question: Question): string {
  if (question.kind !== 'number') return '';
  if (question.answer.kind === 'quantity') return formatExact(question.answer.value);
  const number = content.dataSheets.get(question.dataSheet)!.numbers.get(question.answer.number)!;
  const { rule } = number;
  if (rule.kind === 'between') return formatExact(rule.low);
  return 'value' in rule ? formatExact(rule.value) : '';
}

/** One that is wrong, and of the right kind. */
export function wrongAnswer(question: Question): object {
  const put = posed(question, 0, shelfOf(content))!;
  const right = JSON.stringify(rightAnswer(question));
  if (put.kind === 'number') return { kind: put.kind, text: 'no idea' };
  if (put.kind === 'find-fault') {
    const zone = put.wall.zones.find((one) => !right.includes(`"${one}"`)) ?? put.wall.zones[0];
    return { kind: put.kind, zone, fault: 'rushed' };
  }
  const keys = put.choices.map(({ key }) => key);
  if (put.kind === 'choose-one') {
    return { kind: put.kind, choice: keys.find((key) => !right.includes(key)) };
  }
  if (put.kind === 'choose-all') {
    return { kind: put.kind, choices: keys.filter((key) => !right.includes(key)) };
  }
  const order = (rightAnswer(question) as { steps: readonly string[] }).steps;
  return { kind: put.kind, steps: order.toReversed() };
}

/** Short forms are gone round. */
export const itemAt = ({ items }: KeptPlan, place: number): string =>
  items[(place - 1) % items.length]!;

function valueAt(plan: KeptPlan, place: number, isWrong: boolean): object {
  if (plan.problems) return problemAnswer(plan, itemAt(plan, place), isWrong);
  if (plan.walls) return wallAnswer(plan, itemAt(plan, place), isWrong);
  const question = questionAt(plan, place);
  return isWrong ? wrongAnswer(question) : rightAnswer(question);
}

/** Built without a mistake, or just one card of it. */
export function wallAnswer(plan: KeptPlan, item: string, isWrong = false): WallAnswer {
  const found = wallFor(content, plan, item);
  if (found.kind !== 'same') throw new Error(found.kind);
  const able = { ability: Infinity, learning: 0, practised: 0 };
  const { steps } = attemptOf(found.wall.sequence, able, item);
  let clock = 0;
  const moves = steps.flatMap(({ step: card, settings = {}, minute = clock }): Move[] => {
    const wait = minute - clock;
    clock = minute;
    return [...(wait > 0 ? [{ wait }] : []), { card, settings }];
  });
  return { kind: 'wall', moves: isWrong ? moves.slice(0, 1) : moves };
}

/** What is right for every part of a problem, or something else that can be read. */
export function problemAnswer(plan: KeptPlan, item: string, isWrong = false): ProblemAnswer {
  const found = problemFor(content, plan, item);
  if (found.kind !== 'same') throw new Error(found.kind);
  return {
    kind: 'problem',
    answers: found.instance.parts.map(({ part: { id, answer }, right }) => ({
      part: id,
      text: isWrong ? wrongFor(answer, right) : writeAnswer(answer, right, 'en'),
    })),
  };
}

const wrongFor = (answer: Part['answer'], right: Amount): string =>
  answer.kind === 'decision' ? answer[right === true ? 'no' : 'yes'].en : '7777';

export type Answering = {
  readonly place: number;
  readonly sequence: number;
  readonly id?: string;
  readonly tab?: string;
  readonly isWrong?: boolean;
  readonly clientTime?: number;
};

export function answering(plan: KeptPlan, given: Answering) {
  const { place, sequence, id = freshId(), tab = 'tab-1', isWrong = false, clientTime } = given;
  return {
    kind: 'answered',
    id,
    sequence,
    tab,
    key: itemKey(plan, itemAt(plan, place)),
    value: JSON.stringify(valueAt(plan, place, isWrong)),
    ...(clientTime === undefined ? {} : { clientTime }),
  };
}

/** Tells a server on these records, which remembers nothing from before. */
export async function tell(records: Database, act: Act, id: string, list: readonly unknown[]) {
  const reception = { db: records.db, ledger: openLedger(records), content };
  const received = await receive(reception, act, id, list);
  return received?.receipts.map((one) => ('as' in one ? one.as : one.refused));
}

/** Every item answered rightly but for so many at the end, and handed in after ten minutes. */
export async function handedIn(records: Database, staff: Staff, wrong = 0, part = 'knowledge') {
  const sat = await begun(records, staff, part);
  const { length } = sat.plan.items;
  const answers = sat.plan.items.map((_, index) =>
    answering(sat.plan, {
      place: index + 1,
      sequence: index + 1,
      isWrong: index >= length - wrong,
    }),
  );
  await tell(records, actAt(staff.candidate, 5), sat.id, answers);
  await tell(records, actAt(staff.candidate, 10), sat.id, [{ kind: 'handed-in' }]);
  return sat;
}
