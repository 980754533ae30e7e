/** An examiner puts their name to a check, by their password; from then on nothing of it changes. */
import { createHash } from 'node:crypto';
import type { CheckBundle } from '#engine/compile/check-bundle.ts';
import { checkedSequence } from '#engine/compile/check-bundle.ts';
import type { Content } from '#engine/compile/content.ts';
import { type CheckSheet, merged, type SheetFault } from '#engine/exam/check-sheet.ts';
import { judgedSheet, type JudgedSheet, type LineFault } from '#engine/exam/judged-sheet.ts';
import { keptFromExamining, type KeptOut } from '#engine/exam/separation.ts';
import { rationalText } from '#engine/measure/rational.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { append } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { dayOf } from '../exams/past.ts';
import type { Auth } from '../logins/auth.ts';
import { confirm, type SignInFault } from '../logins/logins.ts';
import { type Act, doerOf } from '../people/member.ts';
import { basisOf } from './basis.ts';
import { type Check, ownCheck, sentSheet } from './checks.ts';
import { involvedWith, keepInvolvement } from './involvement.ts';
import { type KeptPhoto, photosToSign } from './photos.ts';
import { closeTaking, type TakingOutcome } from './taking-outcome.ts';
import { isOver } from './takings.ts';

/**
 * `OPEN`: a critical point was not seen; the check goes on, or is broken off and counts as no try. `OVER`:
 * the other examiner broke it off. `PHOTOS_MISSING`: they have not arrived yet.
 */
export type SignFault =
  | SignInFault
  | SheetFault
  | LineFault
  | { readonly code: 'ABSENT' | 'OVER' | 'NO_REASON' }
  | { readonly code: 'OPEN'; readonly points: readonly string[] }
  | { readonly code: 'PHOTOS_MISSING'; readonly photos: readonly string[] }
  | { readonly code: 'KEPT_OUT'; readonly why: readonly KeptOut[] };

export type Signing = {
  readonly id: string;
  /** What stands on the device: merged as on saving, so that nothing is left behind. */
  readonly sheet: unknown;
  readonly password: string;
  /** Why it was broken off; undefined where it was not. */
  readonly brokenOff: string | undefined;
};

/** `taking`: what came of the part; undefined while the other examiner's name is wanting. */
export type Signed = {
  readonly signed: 'now' | 'before';
  readonly outcome: string;
  readonly taking: TakingOutcome | undefined;
};

type Means = { readonly db: Db; readonly auth: Auth; readonly login: string };

export async function sign(
  { db, auth, login }: Means,
  act: Act,
  { schemes }: Pick<Content, 'schemes'>,
  signing: Signing,
): Promise<Result<Signed, readonly SignFault[]>> {
  // Asked before the records are locked: the library looks the password up by itself.
  const isThem = await confirm({ auth, db }, login, signing.password, new Date(act.at));
  if (!isThem.ok) return fault([isThem.error]);
  return inTurn(db, act.by.company, async (trx) => {
    const found = await ownCheck(trx, act, signing.id);
    if (!found) return fault([{ code: 'ABSENT' as const }]);
    if (found.signedAt !== null) {
      return ok({ signed: 'before' as const, outcome: found.outcome ?? '', taking: undefined });
    }
    if (await isOver(trx, found.taking)) return fault([{ code: 'OVER' as const }]);
    const scheme = schemes.get(found.scheme as never);
    const involved = await involvedWith(trx, act.by.company, found.candidate);
    const { candidate } = found;
    const why = scheme
      ? keptFromExamining(scheme, { candidate, involved }, act.by.person, dayOf(act.at))
      : [];
    if (why.length > 0) return fault([{ code: 'KEPT_OUT' as const, why }]);
    return signFound(trx, act, found, signing);
  });
}

async function signFound(
  trx: Db,
  act: Act,
  found: Check,
  { sheet: given, brokenOff }: Signing,
): Promise<Result<Signed, readonly SignFault[]>> {
  const sent = await sentSheet(trx, found, given, act.at);
  if (!sent.ok) return sent;
  const sheet = merged(found.sheet, sent.value);
  const bundle = await basisOf(trx, found);
  const judged = judgedSheet(checkedSequence(bundle), bundle.part.passMark, sheet);
  if (!judged.ok) return judged;
  const { result } = judged.value;
  if (brokenOff !== undefined && brokenOff.trim() === '') return fault([{ code: 'NO_REASON' }]);
  if (result.outcome === 'open' && brokenOff === undefined) {
    const points = result.unseen.filter(({ severity }) => severity === 'critical');
    return fault([{ code: 'OPEN', points: points.map(({ id }) => id) }]);
  }
  const photos = await photosToSign(trx, found, sheet);
  if (!photos.ok) return fault([{ code: 'PHOTOS_MISSING', photos: photos.error }]);
  await write(trx, act, found, {
    sheet,
    bundle,
    judged: judged.value,
    photos: photos.value,
    brokenOff,
  });
  const person = act.by.person;
  const involvement = { person, as: 'examiner' as const, on: dayOf(act.at) };
  await keepInvolvement(trx, act.by.company, found.candidate, involvement);
  const taking = await closeTaking(trx, act, found, bundle, brokenOff);
  const outcome = brokenOff === undefined ? result.outcome : 'open';
  return ok({ signed: 'now', outcome, taking });
}

type Written = {
  readonly sheet: CheckSheet;
  readonly bundle: CheckBundle;
  readonly judged: JudgedSheet;
  readonly photos: readonly KeptPhoto[];
  readonly brokenOff: string | undefined;
};

async function write(
  trx: Db,
  act: Act,
  { id, application, part, place }: Check,
  { sheet, bundle, judged: { judged, result }, photos, brokenOff }: Written,
): Promise<void> {
  const filled = JSON.stringify(sheet);
  const outcome = brokenOff === undefined ? result.outcome : 'open';
  const detail = {
    sheetRevision: bundle.sheetRevision,
    earned: rationalText(result.earned),
    possible: rationalText(result.possible),
    points: judged.map(({ point, right }) => [point.id, right ?? null]),
    photos,
    ...(brokenOff === undefined ? {} : { brokenOff: brokenOff.trim() }),
  };
  await trx
    .updateTable('hands_on_check')
    .set({ filled, saved_at: act.at, signed_at: act.at, outcome, detail: JSON.stringify(detail) })
    .where('id', '=', id)
    .execute();
  const digest = createHash('sha256').update(filled).digest('hex');
  await append(trx, doerOf(act), {
    action: 'sign hands-on check',
    subject: id,
    detail: { application, part, place, outcome, digest, photos: photos.map((one) => one.digest) },
  });
}
