/**
 * Questions made from a method on one wall, by seed: no author, and as many as there are walls. What is
 * right follows from the order of the work, its reasons and the data sheet; the words around it are
 * content. A few draws each, of which a fault to find costs some reviews.
 */
import { madeId } from './made-id.ts';
import { hashText, pick, randomFrom, shuffle } from '#engine/random.ts';
import type { Question, QuestionId } from '#engine/written/question.ts';
import { readsAs } from '#engine/written/reads-as.ts';
import { comesBefore } from './comes-before.ts';
import { hiddenFault } from './hidden-fault.ts';
import { inOrder } from './in-order.ts';
import { keyPointOf } from './key-point.ts';
import type { Ground, Maker } from './maker.ts';
import { missingStep } from './missing.ts';
import { reasonOf } from './reason.ts';
import { valueOf } from './value.ts';
import { waitAfter } from './wait.ts';

export const madeKinds = [
  'before',
  'reason',
  'key-point',
  'value',
  'wait',
  'missing',
  'order',
  'find-fault',
] as const;
export type MadeKind = (typeof madeKinds)[number];

const makers: Readonly<Record<MadeKind, Maker>> = {
  before: comesBefore,
  reason: reasonOf,
  'key-point': keyPointOf,
  value: valueOf,
  wait: waitAfter,
  missing: missingStep,
  order: inOrder,
  'find-fault': hiddenFault,
};

const draws = 12;

/** The same seed gives the same question. Undefined where this wall has none of the kind. */
export function madeQuestion(
  ground: Ground,
  kind: MadeKind,
  seed: number | string,
): Question | undefined {
  const { method, site } = ground.sequence;
  const answers = Object.values(site).join('/');
  const id = idFor(`${method.id}/${answers}/${kind}/${seed}`);
  const random = randomFrom(`${id}/made`);
  for (let draw = 0; draw < draws; draw += 1) {
    const made = makers[kind](ground, random, id);
    if (made) return made;
  }
  return undefined;
}

const idFor = (whole: string): QuestionId => madeId(hashText(whole).toString(36));

/** Up to so many, none asking the same thing twice, each kind as likely. */
export function madeQuestions(
  ground: Ground,
  seed: number | string,
  count: number,
): readonly Question[] {
  const random = randomFrom(`${seed}/kinds`);
  const made = new Map<string, Question>();
  for (let draw = 0; made.size < count && draw < count * draws; draw += 1) {
    const question = madeQuestion(ground, pick(random, madeKinds), `${seed}/${draw}`);
    if (question) made.set(sameness(question), question);
  }
  return shuffle(random, [...made.values()]);
}

/** Two questions of the same words and the same answer are one; so are two of the same fault. */
export function sameness(question: Question): string {
  const asked = `${question.kind}/${readsAs(question.ask.en)}`;
  if (question.kind === 'choose-one') return `${asked}/${readsAs(question.right.en)}`;
  if (question.kind === 'order')
    return `${asked}/${question.steps.map(({ en }) => readsAs(en)).join('/')}`;
  return question.kind === 'find-fault' ? `${asked}/${question.point.en}` : asked;
}
