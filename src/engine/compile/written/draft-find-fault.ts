import type { Method } from '#engine/method/method.ts';
import { siteFrom, type Site } from '#engine/method/site.ts';
import type { Asked, FindFault, HiddenFault } from '#engine/written/question.ts';
import { sequenceFor, wallHiding } from '#engine/written/hidden-wall.ts';
import { checkName, nearestCure } from '#engine/compile/names.ts';
import { areAlike } from '#engine/compile/quantity.ts';
import { sampleOf } from '#engine/compile/rule.ts';
import { keyAt } from '#engine/compile/source-file.ts';
import { faultAt, type At } from './at.ts';
import { faultFor } from './fault-for.ts';
import type { WrittenQuestion } from './question.ts';
import type { QuestionShelf } from './shelf.ts';

type WrittenFindFault = NonNullable<WrittenQuestion['find-fault']>;

export function draftFindFault(
  at: At,
  written: WrittenFindFault,
  asked: Asked,
  shelf: QuestionShelf,
): FindFault | undefined {
  const path = [...at.path, 'find-fault', 'method'];
  checkName(at.file, 'UNKNOWN_METHOD', path, 'method', written.method, shelf.methodIds);
  const method = shelf.methods.get(written.method);
  const site = method && siteFor(at, method, written);
  const fault = method && faultFor(at, method, written.fault);
  if (!method || !site || !fault || !isOfItsKind(at, method, fault, shelf)) return undefined;
  const { because } = written;
  const { dataSheet } = method;
  const question = { ...asked, kind: 'find-fault', method: method.id, site, dataSheet } as const;
  checkSeen(at, { ...question, fault, because }, fault, shelf);
  return { ...question, fault, because };
}

/** A value that is set wrong is still one of the setting's kind. */
function isOfItsKind(
  { file, path }: At,
  { dataSheet, steps }: Method,
  fault: HiddenFault,
  { dataSheets }: QuestionShelf,
): boolean {
  if (fault.kind !== 'out-of-tolerance') return true;
  const step = steps.find(({ id }) => id === fault.step);
  const setting = step?.settings.find(({ id }) => id === fault.setting);
  const number = setting && dataSheets.get(dataSheet)?.numbers.get(setting.number);
  if (!number) return false;
  const inFault = [...path, 'find-fault', 'fault', 'out-of-tolerance', 'value'];
  return areAlike(file, inFault, fault.value, sampleOf(number.rule).quantity);
}

function siteFor(at: At, method: Method, { site }: WrittenFindFault): Site | undefined {
  const found = siteFrom(method.site, Object.fromEntries(site));
  if (found.ok) return found.value;
  for (const { code, question, given, known } of found.error) {
    const isQuestion = code === 'UNKNOWN_SITE_QUESTION';
    const name = isQuestion ? question : given;
    const message = isQuestion
      ? `There is no site question "${question}".`
      : `There is no value of "${question}" called "${given}".`;
    faultAt(at, ['find-fault', 'site', question], code, message, nearestCure(name, known));
  }
  return undefined;
}

function checkSeen(
  { file, path }: At,
  question: FindFault,
  { kind }: HiddenFault,
  shelf: QuestionShelf,
): void {
  // Without one of its numbers, which has its own fault, there is no wall to look at.
  const sequence = sequenceFor(question, shelf);
  if (!sequence || wallHiding(sequence, question)) return;
  file.fault(
    'FAULT_UNSEEN',
    keyAt(file, [...path, 'find-fault', 'fault']),
    `On this wall "${kind}" cannot be built in, or cannot be seen as one fault.`,
    'Name a fault that this site can have, that shows or lets water in, and brings no other with it.',
  );
}
