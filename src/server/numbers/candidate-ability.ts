/**
 * How able a sitting says somebody is, and how surely: from which questions went right, with the curves
 * that the answers of all gave.
 */
import type { Content } from '#engine/compile/content.ts';
import type { WrittenPart } from '#engine/exam/scheme.ts';
import type { Enough } from '#engine/statistics/enough.ts';
import { expectedAbility } from '#engine/statistics/expected-ability.ts';
import { formAt } from '#engine/statistics/form-precision.ts';
import type { NoCurves } from '#engine/statistics/item-fit.ts';
import type { Db } from '../database/open-database.ts';
import type { Response } from '../exams/marked-sitting.ts';
import type { PartKey } from './answers.ts';
import { numbersOf } from './numbers.ts';
import { topicCurves } from './topic-curves.ts';

export type CandidateAbility = {
  readonly outcome: 'converged';
  readonly ability: number;
  readonly error: number;
  /** Of the answers, so many were to questions with a curve. */
  readonly answers: number;
  /** The share of such questions that somebody so able gets right, 19 times in 20. */
  readonly low: number;
  readonly high: number;
};

const reach = 1.959963984540054;

/** Of the questions that were answered; undefined where none of them has a curve. */
export async function candidateAbility(
  db: Db,
  content: Pick<Content, 'revision'>,
  key: PartKey,
  part: WrittenPart,
  responses: readonly Response[],
): Promise<Enough<CandidateAbility | NoCurves> | undefined> {
  const { precision, items } = await numbersOf(db, content, key, part);
  if (!precision.enough) return precision;
  if (precision.value.outcome !== 'converged') return { enough: true, value: precision.value };
  const estimates = new Map(items.map(({ id, estimate }) => [id, estimate]));
  const known = responses.flatMap(({ item, wasAnswered, isRight }) => {
    const estimate = estimates.get(item);
    return wasAnswered && estimate?.estimable ? [{ estimate, right: isRight ? 1 : 0 }] : [];
  });
  if (known.length === 0) return undefined;
  const { ability, error } = expectedAbility(
    known.map(({ estimate }) => estimate),
    known.map(({ right }) => right),
  );
  const topics = topicCurves(part, items).filter(({ curves }) => curves.length > 0);
  const questions = topics.reduce((sum, { count }) => sum + count, 0);
  const shareAt = (at: number): number => formAt(topics, at).right / questions;
  return {
    enough: true,
    value: {
      outcome: 'converged',
      ability,
      error,
      answers: known.length,
      low: shareAt(ability - reach * error),
      high: shareAt(ability + reach * error),
    },
  };
}
