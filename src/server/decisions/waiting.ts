/** What waits for somebody to decide on it. */
import type { Content } from '#engine/compile/content.ts';
import { lacksIn } from '#engine/exam/evidence.ts';
import type { Db } from '../database/open-database.ts';
import {
  type Application,
  application as applicationOf,
  list,
  partsFor,
} from '../exams/applications.ts';
import { dayOf } from '../exams/past.ts';
import { askedAgain } from './asked-again.ts';
import { caseOf } from './case-of.ts';

export type Waiting = { readonly application: Application; readonly since: string };

export type WaitingList = {
  /** On complete evidence, whoever waits longest first. */
  readonly ready: readonly Waiting[];
  readonly appeals: readonly Waiting[];
};

async function openApplications(db: Db, company: string): Promise<readonly Application[]> {
  const all: Application[] = [];
  let after: string | undefined;
  do {
    const page = await list(db, company, { when: 'open', ...(after ? { after } : {}) });
    all.push(...page.applications);
    after = page.next;
  } while (after);
  return all;
}

/** When the last of what it needs came in; undefined where something is lacking still. */
async function readySince(
  db: Db,
  company: string,
  content: Pick<Content, 'schemes'>,
  application: Application,
  at: string,
): Promise<string | undefined> {
  const about = await caseOf(db, content, company, application, dayOf(at));
  if (!about) return undefined;
  const { scheme, standing, evidence } = about;
  if (lacksIn(partsFor(scheme, application), standing, evidence).length > 0) return undefined;
  if ((await askedAgain(db, application.id)).length > 0) return undefined;
  return (
    evidence
      .map(({ on }) => on)
      .toSorted()
      .at(-1) ?? application.madeAt
  );
}

const inTurn = (some: readonly Waiting[]): readonly Waiting[] =>
  some.toSorted((a, b) => a.since.localeCompare(b.since));

export async function waiting(
  db: Db,
  company: string,
  content: Pick<Content, 'schemes'>,
  at: string,
): Promise<WaitingList> {
  const open = await db
    .selectFrom('appeal')
    .innerJoin('ruling', 'ruling.id', 'appeal.ruling_id')
    .leftJoin('ruling as answer', 'answer.appeal_id', 'appeal.id')
    .select(['ruling.application_id as id', 'appeal.made_at as since'])
    .where('appeal.company_id', '=', company)
    .where('answer.id', 'is', null)
    .execute();
  const appeals: Waiting[] = [];
  for (const { id, since } of open) {
    const application = await applicationOf(db, company, id);
    if (application) appeals.push({ application, since });
  }
  const appealed = new Set(open.map(({ id }) => id));
  const ready: Waiting[] = [];
  for (const application of await openApplications(db, company)) {
    if (appealed.has(application.id)) continue;
    const since = await readySince(db, company, content, application, at);
    if (since) ready.push({ application, since });
  }
  return { ready: inTurn(ready), appeals: inTurn(appeals) };
}
