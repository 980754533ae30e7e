import type { Content } from '#engine/compile/content.ts';
import { appealFaults } from '#engine/exam/appeal.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { isUuid } from '#engine/uuid.ts';
import { append } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { application as applicationOf } from '../exams/applications.ts';
import { dayOf } from '../exams/past.ts';
import { type Act, doerOf } from '../people/member.ts';
import { type DecideFault, refused } from './decide-fault.ts';
import {
  appealsOn,
  decisionOf,
  longestReason,
  reasonFrom,
  ruling as rulingOf,
  rulingsOn,
} from './rulings.ts';

export type Appealing = { readonly id: string; readonly ruling: string; readonly because: string };

/** The candidate appeals against the last decision on their application. */
export const appeal = (
  db: Db,
  act: Act,
  { schemes }: Pick<Content, 'schemes'>,
  { id, ruling, because: given }: Appealing,
): Promise<Result<string, readonly DecideFault[]>> =>
  inTurn(db, act.by.company, async (trx) => {
    const { company, person } = act.by;
    const first = await rulingOf(trx, company, ruling);
    const application = first && (await applicationOf(trx, company, first.application));
    const scheme = application && schemes.get(application.scheme);
    if (!scheme || !isUuid(id)) return refused('ABSENT');
    const appeals = await appealsOn(trx, application.id);
    const same = appeals.find((one) => one.id === id);
    if (same) return same.by === person ? ok(id) : refused('ABSENT');
    const because = reasonFrom(given);
    if (because.length > longestReason) return refused('TOO_LONG');
    const by = { by: person, on: dayOf(act.at) };
    const about = { scheme, candidate: application.person };
    const last = (await rulingsOn(trx, application.id)).at(-1);
    const isOver = last?.id !== first.id || appeals.some((one) => one.ruling === first.id);
    const faults: readonly DecideFault[] = [
      ...appealFaults(about, decisionOf(first, application), by),
      ...(isOver || first.appeal !== null ? [{ code: 'APPEALED_BEFORE' as const }] : []),
      ...(because === '' ? [{ code: 'NO_REASON' as const }] : []),
    ];
    if (faults.length > 0) return fault(faults);
    await trx
      .insertInto('appeal')
      .values({
        id,
        company_id: company,
        ruling_id: first.id,
        by_person_id: person,
        on_date: by.on,
        because,
        made_at: act.at,
      })
      .execute();
    await append(trx, doerOf(act), {
      action: 'appeal against decision',
      subject: application.id,
      detail: { appeal: id, ruling: first.id },
    });
    return ok(id);
  });
