import type { Content } from '#engine/compile/content.ts';
import { decideAppeal } from '#engine/exam/appeal.ts';
import { decide as decideBy, type Proposal, type Verdict } from '#engine/exam/decision.ts';
import type { PartId } from '#engine/exam/scheme.ts';
import { ok, type Result } from '#engine/result.ts';
import { isUuid } from '#engine/uuid.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { type Application, application as applicationOf } from '../exams/applications.ts';
import { dayOf } from '../exams/past.ts';
import type { Act } from '../people/member.ts';
import { caseOf } from './case-of.ts';
import { type DecideFault, refused } from './decide-fault.ts';
import {
  type AppealRow,
  appealsOn,
  decisionOf,
  longestReason,
  openAppeal,
  reasonFrom,
  type Ruling,
  rulingsOn,
  writeRuling,
} from './rulings.ts';

export type Decided = { readonly ruling: string; readonly certificate: string | undefined };
type Outcome = Result<Decided, readonly DecideFault[]>;

/** `id` was made where it was asked for: sent twice, one decision is made. */
export type Deciding = {
  readonly id: string;
  readonly application: string;
  readonly verdict: Verdict;
  readonly because: string;
  readonly asks: readonly string[];
};

type Open = {
  readonly application: Application;
  readonly rulings: readonly Ruling[];
  readonly appeal: AppealRow | undefined;
};

/** The case that is decided on; a decision that was made before under the same id is told as it was. */
async function opened(
  trx: Db,
  act: Act,
  { id, application: asked, because }: Deciding,
): Promise<Outcome | Open> {
  const { company, person } = act.by;
  const application = await applicationOf(trx, company, asked);
  if (!application || !isUuid(id)) return refused('ABSENT');
  const rulings = await rulingsOn(trx, application.id);
  const before = rulings.find((one) => one.id === id);
  if (before) {
    return before.by === person ? ok({ ruling: id, certificate: undefined }) : refused('ABSENT');
  }
  if (because.length > longestReason) return refused('TOO_LONG');
  return {
    application,
    rulings,
    appeal: openAppeal(await appealsOn(trx, application.id), rulings),
  };
}

const proposalOf = ({ by, at }: Act, { verdict, because, asks }: Deciding): Proposal => ({
  verdict,
  by: by.person,
  on: dayOf(at),
  because: reasonFrom(because),
  asks: verdict === 'ask-for-more' ? (asks as readonly PartId[]) : [],
});

/** Decides on an application, where the rules let this person decide so on this evidence. */
export const decide = (
  db: Db,
  act: Act,
  content: Pick<Content, 'schemes' | 'methods'>,
  deciding: Deciding,
): Promise<Outcome> =>
  inTurn(db, act.by.company, async (trx) => {
    const found = await opened(trx, act, deciding);
    if ('ok' in found) return found;
    const { application, appeal } = found;
    if (appeal) return refused('UNDER_APPEAL');
    if (application.closedAt !== null) return refused('CLOSED');
    const about = await caseOf(trx, content, act.by.company, application, dayOf(act.at));
    if (!about) return refused('ABSENT');
    const decided = decideBy(about, proposalOf(act, deciding));
    if (!decided.ok) return decided;
    const written = { id: deciding.id, application, decision: decided.value, about, appeal: null };
    const certificate = await writeRuling(trx, act, content, written);
    return ok({ ruling: deciding.id, certificate });
  });

/** Decides on the open appeal of an application, on what counted on the day of the first decision. */
export const decideOnAppeal = (
  db: Db,
  act: Act,
  content: Pick<Content, 'schemes' | 'methods'>,
  deciding: Deciding,
): Promise<Outcome> =>
  inTurn(db, act.by.company, async (trx) => {
    const found = await opened(trx, act, deciding);
    if ('ok' in found) return found;
    const { application, rulings, appeal } = found;
    const first = rulings.find(({ id }) => id === appeal?.ruling);
    if (!appeal || !first) return refused('NO_APPEAL');
    const about = await caseOf(trx, content, act.by.company, application, first.on);
    if (!about) return refused('ABSENT');
    const before = decisionOf(first, application);
    const decided = decideAppeal(about, before, appeal, proposalOf(act, deciding));
    if (!decided.ok) return decided;
    const { decision } = decided.value;
    const written = { id: deciding.id, application, decision, about, appeal: appeal.id };
    const certificate = await writeRuling(trx, act, content, written);
    return ok({ ruling: deciding.id, certificate });
  });
