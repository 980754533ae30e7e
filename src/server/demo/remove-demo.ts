import type { Db } from '../database/open-database.ts';
import { dropLogin } from '../people/erasure.ts';

/** Of these, each goes before those that it refers to. */
const certification = [
  'api_token',
  'declared_certificate',
  'check_photo',
  'hands_on_check',
  'item_use',
  'sitting_event',
  'sitting',
  'calendar_feed',
  'certificate_issue',
  'certificate_event',
  'certificate',
  'appeal',
  'ruling',
  'retired_item',
  'panel_rating',
  'panel',
  'item_response',
  'part_result',
  'involvement',
  'application',
] as const;

/** Takes the invented company away with everything of it, and the logins that are nobody else's. */
export async function removeDemo(db: Db, company: string): Promise<void> {
  await db.transaction().execute(async (trx) => {
    const attempts = trx.selectFrom('attempt').select('id').where('company_id', '=', company);
    const people = trx.selectFrom('person').select('id').where('company_id', '=', company);
    const given = trx.selectFrom('assignment').select('id').where('company_id', '=', company);
    const logins = await trx
      .selectFrom('person')
      .select('login_id')
      .where('company_id', '=', company)
      .where('login_id', 'is not', null)
      .execute();
    const planned = trx.selectFrom('job').select('id').where('company_id', '=', company);
    for (const table of ['job_person', 'job_travel', 'job_role'] as const) {
      await trx.deleteFrom(table).where('job_id', 'in', planned).execute();
    }
    await trx.deleteFrom('job').where('company_id', '=', company).execute();
    for (const table of certification) {
      await trx.deleteFrom(table).where('company_id', '=', company).execute();
    }
    await trx.deleteFrom('decision').where('company_id', '=', company).execute();
    await trx.deleteFrom('mark').where('attempt_id', 'in', attempts).execute();
    await trx.deleteFrom('attempt').where('company_id', '=', company).execute();
    await trx.deleteFrom('standing').where('person_id', 'in', people).execute();
    await trx.deleteFrom('progress').where('person_id', 'in', people).execute();
    await trx.deleteFrom('assignment_for').where('assignment_id', 'in', given).execute();
    await trx.deleteFrom('assignment_work').where('assignment_id', 'in', given).execute();
    await trx.deleteFrom('assignment').where('company_id', '=', company).execute();
    await trx.deleteFrom('crew_card').where('company_id', '=', company).execute();
    await trx.deleteFrom('audit_entry').where('company_id', '=', company).execute();
    await trx.deleteFrom('person').where('company_id', '=', company).execute();
    await trx.deleteFrom('crew').where('company_id', '=', company).execute();
    await trx.deleteFrom('company').where('id', '=', company).where('is_demo', '=', 1).execute();
    for (const { login_id: login } of logins) await dropLogin(trx, login!);
  });
}
