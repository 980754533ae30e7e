import { faultKinds } from '#engine/inspection/fault.ts';
import { longestText } from '#engine/measure/parse-quantity.ts';
import { zones } from '#engine/method/drawing.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Answer } from './answer.ts';
import { questionKinds, type QuestionKind } from './question.ts';
import type { Posed } from './posed.ts';

export const answerFaultCodes = [
  'NOT_AN_ANSWER',
  'UNKNOWN_KIND',
  'OTHER_KIND',
  'WRONG_TYPE',
  'UNKNOWN_FIELD',
  'UNKNOWN_CHOICE',
  'CHOSEN_TWICE',
] as const;
export type AnswerFaultCode = (typeof answerFaultCodes)[number];

export type AnswerFault = {
  readonly code: AnswerFaultCode;
  /** Which field it is about; empty for the answer itself. */
  readonly path: string;
  readonly message: string;
};

type Fields = Readonly<Record<string, unknown>>;

/** More than any question has. */
const mostChoices = 40;
const longestKey = 80;

/**
 * The one door for an answer from outside; with what was posed, it also has to answer that. Every fault
 * at once.
 */
export function answerFrom(input: unknown, posed?: Posed): Result<Answer, readonly AnswerFault[]> {
  if (typeof input !== 'object' || input === null || Array.isArray(input)) {
    return refuse('NOT_AN_ANSWER', '', 'An answer is an object with a kind.');
  }
  const given = input as Fields;
  const kind = questionKinds.find((known) => known === given['kind']);
  if (!kind) return refuse('UNKNOWN_KIND', 'kind', `A kind is one of ${questionKinds.join(', ')}.`);
  const faults = [
    ...strangers(given, kind),
    ...Object.entries(fields[kind]).flatMap(([name, isSound]) =>
      isSound(given[name])
        ? []
        : [refusal('WRONG_TYPE', name, `"${name}" of this answer is missing or no such value.`)],
    ),
  ];
  if (faults.length > 0) return fault(faults);
  const answer = onlyKnown(given, kind);
  const misfits = posed ? misfitsOf(answer, posed) : [];
  return misfits.length > 0 ? fault(misfits) : ok(answer);
}

type Check = (value: unknown) => boolean;

const isKey: Check = (value) =>
  typeof value === 'string' && value !== '' && value.length <= longestKey;
const areKeys: Check = (value) =>
  Array.isArray(value) && value.length <= mostChoices && value.every(isKey);
const isText: Check = (value) => typeof value === 'string' && value.length <= longestText;
const among =
  (known: readonly string[]): Check =>
  (value) =>
    known.some((one) => one === value);

const fields: Readonly<Record<QuestionKind, Readonly<Record<string, Check>>>> = {
  'choose-one': { choice: isKey },
  'choose-all': { choices: areKeys },
  order: { steps: areKeys },
  number: { text: isText },
  'find-fault': {
    zone: among(zones),
    fault: among(faultKinds),
    card: (value) => value === undefined || isKey(value),
  },
};

const strangers = (given: Fields, kind: QuestionKind): readonly AnswerFault[] =>
  Object.keys(given)
    .filter((name) => name !== 'kind' && !Object.hasOwn(fields[kind], name))
    .map((name) =>
      refusal('UNKNOWN_FIELD', name.slice(0, longestKey), 'No answer of this kind has it.'),
    );

const onlyKnown = (given: Fields, kind: QuestionKind): Answer =>
  Object.fromEntries(
    ['kind', ...Object.keys(fields[kind])]
      .filter((name) => given[name] !== undefined)
      .map((name) => [name, given[name]]),
  ) as Answer;

/** The choices that an answer names, with the field that they stand in. */
export function chosenIn(answer: Answer): readonly [field: string, keys: readonly string[]] {
  if (answer.kind === 'choose-one') return ['choice', [answer.choice]];
  if (answer.kind === 'choose-all') return ['choices', answer.choices];
  return answer.kind === 'order' ? ['steps', answer.steps] : ['', []];
}

function misfitsOf(answer: Answer, posed: Posed): readonly AnswerFault[] {
  if (answer.kind !== posed.kind) {
    return [refusal('OTHER_KIND', 'kind', `The question is answered by ${posed.kind}.`)];
  }
  if (answer.kind === 'find-fault' && posed.kind === 'find-fault') {
    return posed.wall.zones.includes(answer.zone)
      ? []
      : [refusal('UNKNOWN_CHOICE', 'zone', 'This wall has no such place.')];
  }
  const [field, keys] = chosenIn(answer);
  const known = new Set<string>('choices' in posed ? posed.choices.map(({ key }) => key) : []);
  return keys.flatMap((key, at): readonly AnswerFault[] => {
    if (!known.has(key)) return [refusal('UNKNOWN_CHOICE', field, 'This is none of the choices.')];
    const isAgain = keys.indexOf(key) < at;
    return isAgain ? [refusal('CHOSEN_TWICE', field, 'A choice is taken once.')] : [];
  });
}

const refusal = (code: AnswerFaultCode, path: string, message: string): AnswerFault => ({
  code,
  path,
  message,
});

const refuse = (code: AnswerFaultCode, path: string, message: string) =>
  fault([refusal(code, path, message)]);
