import type { Content } from '#engine/compile/content.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { isUuid } from '#engine/uuid.ts';
import { append } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { application as applicationOf } from '../exams/applications.ts';
import { isPresent } from '../people/is-present.ts';
import { type Act, doerOf } from '../people/member.ts';
import { keepBasis } from './basis.ts';
import { type ExamineFault, mayExamine } from './may-examine.ts';

/** `id` was made where it was asked for: asked twice, one check is begun. */
export type Beginning = {
  readonly id: string;
  readonly application: string;
  readonly part: string;
};

/**
 * Begins the check of a part as its first examiner, or joins it as the second where the scheme asks for
 * two; tells its id. Who has it under way already is told that one.
 */
export const begin = (
  db: Db,
  act: Act,
  content: Content,
  { id, application: asked, part }: Beginning,
): Promise<Result<string, ExamineFault>> =>
  inTurn(db, act.by.company, async (trx) => {
    const application = await applicationOf(trx, act.by.company, asked);
    if (!isUuid(id) || !application || application.closedAt !== null)
      return fault({ code: 'ABSENT' });
    if (!(await isPresent(trx, act.by.company, application.person)))
      return fault({ code: 'ABSENT' });
    const may = await mayExamine(trx, act, content, application, part);
    if (!may.ok) return may;
    const { places, mine } = may.value;
    if (mine) return ok(mine.id);
    const first = places[0];
    // Both judge the same points, whatever the content says meanwhile.
    const key = first
      ? { content_revision: first.content_revision, scheme: application.scheme, part }
      : await keepBasis(trx, content, application.scheme, part);
    if (!key) return fault({ code: 'UNKNOWN_PART' });
    const { numInsertedOrUpdatedRows } = await trx
      .insertInto('hands_on_check')
      .values({
        id,
        ...key,
        company_id: act.by.company,
        application_id: application.id,
        person_id: application.person,
        taking_id: first?.taking ?? id,
        place: first ? (first.place === 1 ? 2 : 1) : 1,
        examiner_id: act.by.person,
        begun_at: act.at,
        filled: '{}',
        saved_at: act.at,
      })
      .onConflict((conflict) => conflict.column('id').doNothing())
      .executeTakeFirst();
    if (!numInsertedOrUpdatedRows) return fault({ code: 'ABSENT' });
    await append(trx, doerOf(act), {
      action: 'begin hands-on check',
      subject: id,
      detail: { application: application.id, person: application.person, part },
    });
    return ok(id);
  });
