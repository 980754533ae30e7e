/** A finished attempt as it is kept: what was played, how, and what it was marked with at the time. */
import { isFields } from '#engine/fields.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { type AttemptFault, type AttemptFile, checkShape, refusal } from './attempt-file.ts';
import { type Help, helpCost } from './guidance.ts';
import { isUuid } from '#engine/uuid.ts';
import { type Outcome, outcomes } from './outcome.ts';

/** With hints while building, or marked at the end. */
export const attemptModes = ['guided', 'own'] as const;
export type AttemptMode = (typeof attemptModes)[number];

export type KeptAttempt = {
  /** Made where the attempt was; the same attempt kept twice is one. */
  readonly id: string;
  /** An instant as ISO 8601 writes it, in UTC. */
  readonly finished: string;
  readonly mode: AttemptMode;
  readonly seed: string;
  /** First and last step of the stretch that was practised; none for a whole wall. */
  readonly part?: readonly [from: string, to: string];
  /** The assigned work that it is for, by its UUID. */
  readonly work?: string;
  readonly help: readonly Help[];
  /** Of the content that marked it. */
  readonly revision: string;
  readonly score: number;
  readonly outcome: Outcome;
  readonly attempt: AttemptFile;
};

/** Attempts as they leave a browser. */
export type AttemptsFile = { readonly attempts: readonly KeptAttempt[] };

/** More attempts than one person makes in years. */
export const mostAttempts = 5000;

/** The one door for kept attempts from outside: all of them, or every fault with its place. */
export function keptAttemptsFrom(
  input: unknown,
): Result<readonly KeptAttempt[], readonly AttemptFault[]> {
  const list = isFields(input) ? input['attempts'] : undefined;
  if (!Array.isArray(list)) {
    return fault([
      refusal('NOT_AN_ATTEMPT', '', 'A file of attempts is an object with a list "attempts".'),
    ]);
  }
  if (list.length > mostAttempts) {
    return fault([refusal('TOO_MANY_CARDS', 'attempts', `At most ${mostAttempts} are read.`)]);
  }
  const faults = list.flatMap((one: unknown, at) => keptFaults(one, `attempts[${at}]`));
  return faults.length > 0 ? fault(faults) : ok(list as readonly KeptAttempt[]);
}

/** What is wrong with one kept attempt, each with its place below `path`. */
export function keptFaults(one: unknown, path = ''): readonly AttemptFault[] {
  const under = (name: string): string => (path === '' ? name : `${path}.${name}`);
  if (!isFields(one)) {
    return [refusal('NOT_AN_ATTEMPT', path, 'A kept attempt is an object with an attempt in it.')];
  }
  const wrong = Object.entries(checks).flatMap(([name, { holds, form, optional }]) => {
    if (!Object.hasOwn(one, name)) {
      return optional ? [] : [refusal('MISSING_FIELD', under(name), `"${name}" is missing.`)];
    }
    return holds(one[name]) ? [] : [refusal('WRONG_TYPE', under(name), `"${name}" is ${form}.`)];
  });
  if (!Object.hasOwn(one, 'attempt')) {
    return [...wrong, refusal('MISSING_FIELD', under('attempt'), '"attempt" is missing.')];
  }
  const inside = checkShape(one['attempt']).map((found) => ({
    ...found,
    path: found.path === '' ? under('attempt') : `${under('attempt')}.${found.path}`,
  }));
  return [...wrong, ...inside];
}

type Check = {
  readonly holds: (value: unknown) => boolean;
  readonly form: string;
  readonly optional?: true;
};

const isText = (value: unknown): value is string =>
  typeof value === 'string' && value !== '' && value.length <= 200;

const isOneOf =
  (words: readonly string[]) =>
  (value: unknown): boolean =>
    typeof value === 'string' && words.includes(value);

const isListOf = (value: unknown, holds: (item: unknown) => boolean): boolean =>
  Array.isArray(value) && value.every(holds);

const isInstant = (value: unknown): boolean =>
  isText(value) && /^\d{4}-\d\d-\d\dT/.test(value) && Number.isFinite(Date.parse(value));

const helps = Object.keys(helpCost);

const checks: Readonly<Record<Exclude<keyof KeptAttempt, 'attempt'>, Check>> = {
  id: {
    holds: (value) => isText(value) && /^[\w-]+$/.test(value),
    form: 'a name of letters, digits and dashes',
  },
  finished: { holds: isInstant, form: 'an instant such as "2030-05-01T07:30:00.000Z"' },
  mode: { holds: isOneOf(attemptModes), form: `one of ${attemptModes.join(', ')}` },
  seed: { holds: isText, form: 'text' },
  part: {
    holds: (value) => isListOf(value, isText) && (value as unknown[]).length === 2,
    form: 'a list of two steps, the first and the last of the stretch',
    optional: true,
  },
  work: { holds: isUuid, form: 'the UUID of assigned work', optional: true },
  help: {
    holds: (value) => isListOf(value, isOneOf(helps)) && (value as unknown[]).length <= 10_000,
    form: `a list of ${helps.join(', ')}`,
  },
  revision: { holds: isText, form: 'text' },
  score: {
    holds: (value) => typeof value === 'number' && value >= 0 && value <= 100,
    form: 'a number from 0 to 100',
  },
  outcome: { holds: isOneOf(outcomes), form: `one of ${outcomes.join(', ')}` },
};
