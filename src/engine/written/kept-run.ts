/** A run of written questions as it is kept, from its first answer on. */
import { isFields } from '#engine/fields.ts';
import { isUuid } from '#engine/uuid.ts';

/** More than any topic is asked for at once. */
export const mostInRun = 40;

export type KeptRun = {
  /** Made where it was answered; the same run kept twice is one. */
  readonly id: string;
  /** The instant of the last answer, as ISO 8601 writes it, in UTC. */
  readonly at: string;
  readonly topic: string;
  readonly seed: string;
  /** How many questions were asked for. */
  readonly count: number;
  /** The assigned work that it is for, by its UUID. */
  readonly work?: string;
  /** Of the content that it was asked from. */
  readonly revision: string;
  /** Ids, in the order in which they were asked, none twice. */
  readonly questions: readonly string[];
  /** At the place of its question; null for none. */
  readonly answers: readonly unknown[];
};

const isText = (value: unknown): value is string =>
  typeof value === 'string' && value.length <= 400;

const isSoManyUpTo = (most: number, value: unknown): boolean =>
  Number.isSafeInteger(value) && (value as number) >= 1 && (value as number) <= most;

/** What a browser kept may be of another making, or half written. Answers are judged with their question. */
export const isKeptRun = (value: unknown): value is KeptRun =>
  isFields(value) &&
  ['id', 'topic', 'seed', 'revision', 'at'].every((name) => isText(value[name])) &&
  Number.isFinite(Date.parse(value['at'] as string)) &&
  isSoManyUpTo(mostInRun, value['count']) &&
  (value['work'] === undefined || isUuid(value['work'])) &&
  areIds(value['questions'], value['count'] as number) &&
  Array.isArray(value['answers']) &&
  value['answers'].length <= value['questions'].length &&
  value['answers'].every((answer) => answer === null || isFields(answer));

const areIds = (value: unknown, count: number): value is readonly string[] =>
  Array.isArray(value) &&
  value.length >= 1 &&
  value.length <= count &&
  value.every(isText) &&
  new Set(value).size === value.length;
