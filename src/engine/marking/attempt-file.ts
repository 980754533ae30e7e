/** An attempt as it is kept, sent and given to the command line: JSON with quantities as text. */
import { type Fields, isFields } from '#engine/fields.ts';

export type AttemptFile = {
  readonly method: string;
  readonly site: Readonly<Record<string, string>>;
  readonly dataSheet?: string;
  readonly steps: readonly PlayedFile[];
};

export type PlayedFile = {
  readonly step: string;
  readonly settings?: Readonly<Record<string, string>>;
  /** Minutes on the simulated clock since the work began; never less than the card before. */
  readonly minute?: number;
};

export const attemptFaultCodes = [
  'NOT_AN_ATTEMPT',
  'MISSING_FIELD',
  'UNKNOWN_FIELD',
  'WRONG_TYPE',
  'UNKNOWN_METHOD',
  'UNKNOWN_DATA_SHEET',
  'UNKNOWN_SITE_QUESTION',
  'UNKNOWN_SITE_VALUE',
  'UNKNOWN_STEP',
  'UNKNOWN_SETTING',
  'BAD_QUANTITY',
  'BAD_MINUTE',
  'CLOCK_RUNS_BACK',
  'TOO_MANY_CARDS',
  'UNSOUND_CONTENT',
] as const;
export type AttemptFaultCode = (typeof attemptFaultCodes)[number];

export type AttemptFault = {
  readonly code: AttemptFaultCode;
  /** Where in the file, as `steps[3].settings.turn-up`; empty for the file itself. */
  readonly path: string;
  readonly message: string;
};

/** More cards than anybody plays on one wall. */
export const mostCards = 500;

/** Gathers every fault of an attempt's shape; what is of the right shape comes back as it was. */
export function checkShape(input: unknown): readonly AttemptFault[] {
  if (!isFields(input)) {
    return [refusal('NOT_AN_ATTEMPT', '', 'An attempt is an object with method, site and steps.')];
  }
  const known = ['method', 'site', 'dataSheet', 'steps'];
  return [
    ...unknownFields(input, known, ''),
    ...expectText(input, 'method', ''),
    ...(input['dataSheet'] === undefined ? [] : expectText(input, 'dataSheet', '')),
    ...expectTexts(input['site'], 'site'),
    ...checkSteps(input['steps']),
  ];
}

function checkSteps(steps: unknown): readonly AttemptFault[] {
  if (steps === undefined)
    return [refusal('MISSING_FIELD', 'steps', 'The list of steps is missing.')];
  if (!Array.isArray(steps)) return [refusal('WRONG_TYPE', 'steps', 'Steps are a list.')];
  if (steps.length > mostCards) {
    return [refusal('TOO_MANY_CARDS', 'steps', `At most ${mostCards} cards are marked.`)];
  }
  return steps.flatMap((step: unknown, at) => {
    const path = `steps[${at}]`;
    if (!isFields(step)) {
      return [refusal('WRONG_TYPE', path, 'A step is an object such as {"step": "snap-line"}.')];
    }
    return [
      ...unknownFields(step, ['step', 'settings', 'minute'], path),
      ...expectText(step, 'step', path),
      ...(step['settings'] === undefined ? [] : expectTexts(step['settings'], `${path}.settings`)),
      ...checkMinute(step['minute'], `${path}.minute`),
    ];
  });
}

function checkMinute(minute: unknown, path: string): readonly AttemptFault[] {
  if (minute === undefined) return [];
  const isTime = typeof minute === 'number' && minute >= 0 && minute <= 1e6;
  return isTime ? [] : [refusal('BAD_MINUTE', path, 'A minute is a number from 0 to 1,000,000.')];
}

function expectText(fields: Fields, name: string, within: string): readonly AttemptFault[] {
  const path = within === '' ? name : `${within}.${name}`;
  const value = Object.hasOwn(fields, name) ? fields[name] : undefined;
  if (value === undefined) return [refusal('MISSING_FIELD', path, `"${name}" is missing.`)];
  return typeof value === 'string' ? [] : [refusal('WRONG_TYPE', path, `"${name}" is text.`)];
}

function expectTexts(value: unknown, path: string): readonly AttemptFault[] {
  if (value === undefined) return [refusal('MISSING_FIELD', path, `"${path}" is missing.`)];
  if (!isFields(value)) return [refusal('WRONG_TYPE', path, `"${path}" is an object of texts.`)];
  return Object.entries(value)
    .filter(([, text]) => typeof text !== 'string')
    .map(([name]) => refusal('WRONG_TYPE', `${path}.${name}`, 'Write it as text, such as "7 in".'));
}

function unknownFields(
  fields: Fields,
  known: readonly string[],
  within: string,
): readonly AttemptFault[] {
  return Object.keys(fields)
    .filter((name) => !known.includes(name))
    .map((name) =>
      refusal(
        'UNKNOWN_FIELD',
        within === '' ? name : `${within}.${name}`,
        `There is no "${name}" here; there is ${known.join(', ')}.`,
      ),
    );
}

export const refusal = (code: AttemptFaultCode, path: string, message: string): AttemptFault => ({
  code,
  path,
  message,
});
