/** Whether somebody may begin the check of a part, or take the second examiner's place in it. */
import type { Content } from '#engine/compile/content.ts';
import type { HandsOnPart, Scheme } from '#engine/exam/scheme.ts';
import { keptFromExamining, type KeptOut } from '#engine/exam/separation.ts';
import type { PartState } from '#engine/exam/standing.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Db } from '../database/open-database.ts';
import { askedAgain } from '../decisions/asked-again.ts';
import { type Application, partsFor, standingFor } from '../exams/applications.ts';
import { dayOf } from '../exams/past.ts';
import type { Act } from '../people/member.ts';
import { involvedWith } from './involvement.ts';
import { type Place, placesUnderWay } from './takings.ts';

/**
 * `ABSENT`: no open application of somebody who is still here. `UNKNOWN_PART`: it has no such check.
 * `NOT_NOW`: the part is passed, must wait, or needs a certificate first. `UNDER_WAY`: others see to it.
 */
export type ExamineFault =
  | { readonly code: 'ABSENT' | 'UNKNOWN_PART' | 'UNDER_WAY' }
  | { readonly code: 'NOT_NOW'; readonly state: PartState }
  | { readonly code: 'KEPT_OUT'; readonly why: readonly KeptOut[] };

/** `mine`: a place that they have already. */
export type Examinable = { readonly places: readonly Place[]; readonly mine: Place | undefined };

export const handsOnPart = (
  content: Content,
  application: Pick<Application, 'scheme' | 'renews'>,
  part: string,
): { readonly scheme: Scheme; readonly part: HandsOnPart } | undefined => {
  const scheme = content.schemes.get(application.scheme);
  const found = scheme && partsFor(scheme, application).find(({ id }) => id === part);
  return scheme && found?.kind === 'hands-on' ? { scheme, part: found } : undefined;
};

export async function mayExamine(
  db: Db,
  { by, at }: Act,
  content: Content,
  application: Application,
  asked: string,
): Promise<Result<Examinable, ExamineFault>> {
  const known = handsOnPart(content, application, asked);
  if (!known) return fault({ code: 'UNKNOWN_PART' });
  const { scheme, part } = known;
  const places = await placesUnderWay(db, application.id, part.id);
  const mine = places.find(({ examiner }) => examiner === by.person);
  if (mine) return ok({ places, mine });
  const today = dayOf(at);
  const { parts } = await standingFor(db, scheme, application, today);
  const { state } = parts.find((one) => one.part === part.id)!;
  const isAsked =
    state.kind === 'passed' && (await askedAgain(db, application.id)).includes(part.id);
  if (state.kind !== 'may-take' && !isAsked) return fault({ code: 'NOT_NOW', state });
  if (places.length >= part.examiners) return fault({ code: 'UNDER_WAY' });
  const involved = await involvedWith(db, by.company, application.person);
  const candidate = application.person;
  const why = keptFromExamining(scheme, { candidate, involved }, by.person, today);
  return why.length > 0 ? fault({ code: 'KEPT_OUT', why }) : ok({ places, mine });
}
