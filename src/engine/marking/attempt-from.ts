import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { type Rational, rational } from '#engine/measure/rational.ts';
import type { DataSheet } from '#engine/method/data-sheet.ts';
import type {
  DataSheetId,
  DecoyId,
  Method,
  MethodId,
  SettingId,
  StepId,
} from '#engine/method/method.ts';
import { type Sequence, sequenceOf } from '#engine/method/sequence.ts';
import { siteFrom } from '#engine/method/site.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Attempt, Played } from './attempt.ts';
import {
  type AttemptFault,
  type AttemptFile,
  checkShape,
  type PlayedFile,
  refusal,
} from './attempt-file.ts';

/** What attempts are read against. */
export type Shelf = {
  readonly methods: ReadonlyMap<MethodId, Method>;
  readonly dataSheets: ReadonlyMap<DataSheetId, DataSheet>;
  /** In place of building the sequence anew, for who marks many. */
  readonly sequenceOf?: typeof sequenceOf;
};

/** The one door for an attempt from outside: right ever after, or every fault with its place. */
export function attemptFrom(
  input: unknown,
  shelf: Shelf,
): Result<Attempt, readonly AttemptFault[]> {
  const misshapen = checkShape(input);
  if (misshapen.length > 0) return fault(misshapen);
  const file = input as AttemptFile;
  const sequence = sequenceFrom(file, shelf);
  if (!sequence.ok) return sequence;
  const read = file.steps.map((card, at) => playedFrom(card, `steps[${at}]`, sequence.value));
  const faults = [
    ...read.flatMap((result) => (result.ok ? [] : result.error)),
    ...clockFaults(file.steps),
  ];
  if (faults.length > 0) return fault(faults);
  return ok({
    sequence: sequence.value,
    played: read.flatMap((result) => (result.ok ? [result.value] : [])),
  });
}

/** The sequence that an attempt names by method, site and data sheet. */
export function sequenceFrom(
  { method: methodId, site: answers, dataSheet: sheetId }: Omit<AttemptFile, 'steps'>,
  { methods, dataSheets, sequenceOf: built = sequenceOf }: Shelf,
): Result<Sequence, readonly AttemptFault[]> {
  const method = methods.get(methodId as MethodId);
  if (!method) return unknown('UNKNOWN_METHOD', 'method', methodId, methods.keys());
  const sheet = dataSheets.get((sheetId ?? method.dataSheet) as DataSheetId);
  if (!sheet) {
    return unknown('UNKNOWN_DATA_SHEET', 'dataSheet', sheetId ?? '', dataSheets.keys());
  }
  const site = siteFrom(method.site, answers);
  if (!site.ok) {
    return fault(
      site.error.map(({ code, question, given, known }) =>
        code === 'UNKNOWN_SITE_QUESTION'
          ? refusal(code, `site.${question}`, notKnown(question, known))
          : refusal(code, `site.${question}`, notKnown(given, known)),
      ),
    );
  }
  const sequence = built(method, sheet, site.value);
  if (sequence.ok) return sequence;
  const said =
    sequence.error.code === 'CIRCULAR_ORDER'
      ? `Its order is circular: ${sequence.error.steps.join(' before ')}.`
      : `Step "${sequence.error.step}" needs "${sequence.error.number}" of the data sheet.`;
  return fault([refusal('UNSOUND_CONTENT', 'method', said)]);
}

function playedFrom(
  { step, settings = {}, minute }: PlayedFile,
  path: string,
  { method, steps }: Sequence,
): Result<Played, readonly AttemptFault[]> {
  const cards = [...method.steps, ...method.decoys].map(({ id }) => id as string);
  if (!cards.includes(step)) return unknown('UNKNOWN_STEP', `${path}.step`, step, cards);
  const asks = steps.find(({ id }) => id === step)?.asks;
  const given = new Map<SettingId, Quantity>();
  const faults: AttemptFault[] = [];
  for (const [name, text] of Object.entries(settings)) {
    const place = `${path}.settings.${name}`;
    const ask = asks?.find(({ id }) => id === name);
    // A step of another wall is judged for being there, whatever it was set to.
    if (!ask && asks) {
      const known = asks.map(({ id }) => id);
      faults.push(refusal('UNKNOWN_SETTING', place, notKnown(name, known)));
    }
    if (!ask) continue;
    const quantity = parseQuantity(text, ask.sheetNumber.dimension);
    if (quantity.ok) given.set(ask.id, quantity.value);
    else faults.push(refusal('BAD_QUANTITY', place, quantity.error.message.en));
  }
  if (faults.length > 0) return fault(faults);
  return ok({ card: step as StepId | DecoyId, settings: given, minute: minuteFrom(minute) });
}

/** Minutes to a thousandth, so that a float of a clock becomes an exact number. */
const minuteFrom = (minute: number | undefined): Rational | undefined =>
  minute === undefined ? undefined : rational(Math.round(minute * 1000), 1000);

function clockFaults(steps: readonly PlayedFile[]): readonly AttemptFault[] {
  let latest = 0;
  return steps.flatMap(({ minute }, at) => {
    if (minute === undefined) return [];
    const isBack = minute < latest;
    latest = Math.max(latest, minute);
    const said = `The clock runs back: ${minute} comes after ${latest}.`;
    return isBack ? [refusal('CLOCK_RUNS_BACK', `steps[${at}].minute`, said)] : [];
  });
}

const unknown = (
  code: AttemptFault['code'],
  path: string,
  given: string,
  known: Iterable<string>,
) => fault([refusal(code, path, notKnown(given, [...known]))]);

const notKnown = (given: string, known: readonly string[]): string =>
  `There is no "${given.slice(0, 80)}" here; there is ${known.join(', ') || 'nothing to name'}.`;
