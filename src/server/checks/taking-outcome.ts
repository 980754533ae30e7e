/** What came of a part once all its examiners have signed, or one of them has broken it off. */
import { type CheckBundle, checkedSequence } from '#engine/compile/check-bundle.ts';
import type { HandsOnResult } from '#engine/exam/hands-on-result.ts';
import { judgedSheet, type JudgedSheet } from '#engine/exam/judged-sheet.ts';
import { jointOutcome, judgedByTwo, type JudgedByTwo } from '#engine/exam/two-examiners.ts';
import { quantity } from '#engine/measure/conversion.ts';
import { approximate, rationalText, zero } from '#engine/measure/rational.ts';
import { append } from '../audit/audit-trail.ts';
import type { Db } from '../database/open-database.ts';
import { dayOf } from '../exams/past.ts';
import { type Act, doerOf } from '../people/member.ts';
import { type Check, signedOf } from './checks.ts';

/** `to-be-settled`: two examiners part ways, and others watch the candidate again. */
export type TakingOutcome = HandsOnResult['outcome'] | 'to-be-settled';

/** What the records say of it: nobody fails because examiners part ways, or because it rained. */
const results = {
  passed: 'passed',
  failed: 'failed',
  open: 'void',
  'to-be-settled': 'void',
} as const satisfies Readonly<Record<TakingOutcome, string>>;

const shareOf = ({ earned, possible }: HandsOnResult): number | null =>
  possible.equals(zero) ? null : approximate(earned.div(possible));

const mean = (shares: readonly (number | null)[]): number | null =>
  shares.some((share) => share === null)
    ? null
    : shares.reduce<number>((sum, share) => sum + share!, 0) / shares.length;

/** The result, where there is one now; undefined while a name is wanting. */
export async function closeTaking(
  trx: Db,
  act: Act,
  found: Check,
  bundle: CheckBundle,
  brokenOff: string | undefined,
): Promise<TakingOutcome | undefined> {
  const checks = await signedOf(trx, act.by.company, found.taking);
  const isBroken = brokenOff !== undefined;
  if (!isBroken && checks.length < bundle.part.examiners) return undefined;
  const judged = checks.map(({ sheet }) => judgedAgain(bundle, sheet));
  const [first, second] = judged;
  const two = first && second && judgedByTwo(first.judged, second.judged);
  const outcome = isBroken ? 'open' : together(bundle, first!, second, two);
  await trx
    .insertInto('part_result')
    .values({
      id: found.taking,
      application_id: found.application,
      company_id: act.by.company,
      person_id: found.candidate,
      scheme: found.scheme,
      part: found.part,
      on_date: dayOf(act.at),
      result: results[outcome],
      share: mean(judged.map(({ result }) => shareOf(result))),
      examiners: JSON.stringify(checks.map(({ examiner }) => examiner)),
      agreement: two?.agreement ? rationalText(two.agreement) : null,
      detail: JSON.stringify({
        kind: 'hands-on',
        outcome,
        checks: checks.map(({ id }) => id),
        ...(two ? { counts: two.counts } : {}),
      }),
      content_revision: found.content_revision,
      made_at: act.at,
      // The candidate stood there: nothing of it is held back.
      released_at: act.at,
    })
    .execute();
  await append(trx, doerOf(act), {
    action: 'close hands-on check',
    subject: found.taking,
    detail: { application: found.application, part: found.part, result: results[outcome], outcome },
  });
  return outcome;
}

function judgedAgain(bundle: CheckBundle, sheet: Check['sheet']): JudgedSheet {
  const judged = judgedSheet(checkedSequence(bundle), bundle.part.passMark, sheet);
  if (!judged.ok) throw new Error('A signed check reads no more.');
  return judged.value;
}

function together(
  { part }: CheckBundle,
  first: JudgedSheet,
  second: JudgedSheet | undefined,
  two: JudgedByTwo | undefined,
): TakingOutcome {
  if (!second || !two) return first.result.outcome;
  const asked = part.agreement ?? quantity(0, '%');
  return jointOutcome(first.result, second.result, two, asked);
}
