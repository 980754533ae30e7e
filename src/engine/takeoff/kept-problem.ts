/** A problem as it is kept once something of it was answered, whether or not all of it was. */
import { isFields } from '#engine/fields.ts';
import { isUuid } from '#engine/uuid.ts';
import { verdictKinds, type VerdictKind } from './verdict.ts';

/** Written in, or picked from what the slips lead to. */
export const answerForms = ['entry', 'choice'] as const;
export type AnswerForm = (typeof answerForms)[number];

export type KeptProblem = {
  /** Made where it was answered; the same problem kept twice is one. */
  readonly id: string;
  /** The instant of the last answer, as ISO 8601 writes it, in UTC. */
  readonly at: string;
  readonly family: string;
  readonly seed: string;
  readonly form: AnswerForm;
  /** The assigned work that it is for, by its UUID. */
  readonly work?: string;
  /** Of the content, and of the data sheet, that marked it. */
  readonly revision: string;
  readonly sheetRevision: string;
  /** One for each part that was answered or given up, in their order. */
  readonly answers: readonly KeptAnswer[];
};

export type KeptAnswer = {
  readonly part: string;
  /** Everything that was given in turn. What the first was worth counts, the others taught. */
  readonly tries: readonly KeptTry[];
  readonly verdict: VerdictKind;
  readonly slips: readonly string[];
  readonly followed: boolean;
  readonly credit: number;
  /** The working was looked at. */
  readonly shown: boolean;
  /** Right in the end, or given up: nothing more is to be answered here. */
  readonly closed: boolean;
};

/** A choice is kept as it is written in English. */
export type KeptTry = { readonly text: string; readonly picked?: string };

const isText = (value: unknown): value is string =>
  typeof value === 'string' && value.length <= 400;

const isOneOf = (value: unknown, words: readonly string[]): boolean =>
  typeof value === 'string' && words.includes(value);

const isListOf = (value: unknown, holds: (item: unknown) => boolean): boolean =>
  Array.isArray(value) && value.length <= 1000 && value.every(holds);

const isTry = (value: unknown): boolean =>
  isFields(value) &&
  isText(value['text']) &&
  (value['picked'] === undefined || isText(value['picked']));

const isAnswer = (value: unknown): boolean =>
  isFields(value) &&
  isText(value['part']) &&
  isListOf(value['tries'], isTry) &&
  isOneOf(value['verdict'], verdictKinds) &&
  isListOf(value['slips'], isText) &&
  typeof value['followed'] === 'boolean' &&
  [0, 0.5, 1].includes(value['credit'] as number) &&
  typeof value['shown'] === 'boolean' &&
  typeof value['closed'] === 'boolean';

/** What a browser kept may be of another making, or half written. */
export const isKeptProblem = (value: unknown): value is KeptProblem =>
  isFields(value) &&
  ['id', 'family', 'seed', 'revision', 'sheetRevision'].every((name) => isText(value[name])) &&
  isText(value['at']) &&
  Number.isFinite(Date.parse(value['at'])) &&
  isOneOf(value['form'], answerForms) &&
  (value['work'] === undefined || isUuid(value['work'])) &&
  isListOf(value['answers'], isAnswer);
