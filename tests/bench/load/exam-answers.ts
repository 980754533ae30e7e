/** What is sent while an examination is measured: answers of many candidates, each to a form of their own. */
import { createHmac, randomBytes } from 'node:crypto';
import { sql } from 'kysely';
import type { Db } from '#server/database/open-database.ts';
import { secret } from '#server/database/secret.ts';
import { setUpSitting } from '#server/exams/set-up.ts';
import { freshId } from '#server/fresh-id.ts';
import { sessionCookie } from '#server/logins/session.ts';
import { content, examStaff, opened, scheme } from '../../server/exams/candidate.ts';
import { answering, planIn } from '../../server/exams/sittings.ts';
import type { Database } from '#server/database/open-database.ts';
import type { Shot } from './client.ts';

const mark = 'identifier';

/** Signed in without a password, which would take longer to make than all the rest. */
async function signedIn(db: Db, key: string): Promise<{ login: string; cookie: string }> {
  const [login, token] = [freshId(), randomBytes(24).toString('hex')];
  const [now, until] = ['2020-01-01', '2099-01-01'].map((day) => `${day}T00:00:00.000Z`);
  await sql`insert into login ("id", "name", "email", "emailVerified", "createdAt", "updatedAt")
    values (${login}, 'Candidate', ${`${login}@example.test`}, 0, ${now}, ${now})`.execute(db);
  await sql`insert into session ("id", "token", "userId", "expiresAt", "createdAt", "updatedAt")
    values (${freshId()}, ${token}, ${login}, ${until}, ${now}, ${until})`.execute(db);
  const signature = createHmac('sha256', key).update(token).digest('base64');
  return { login, cookie: `${sessionCookie}=${encodeURIComponent(`${token}.${signature}`)}` };
}

/** So many candidates, each with a sitting under way; a shot is an answer of one of them. */
export async function answersTo(records: Database, candidates: number): Promise<readonly Shot[]> {
  const { db } = records;
  const staff = await examStaff(db);
  const application = await opened(db, staff);
  const asked = { application, part: 'knowledge' };
  const made = await setUpSitting(db, staff.examiner, content, asked);
  if (!made.ok) throw new Error(made.error.code);
  const drawn = await planIn(records, made.value);
  const key = await secret(db, 'sessions');
  const at = new Date().toISOString();
  const shots: Shot[] = [];
  for (let nth = 0; nth < candidates; nth += 1) {
    const { login, cookie } = await signedIn(db, key);
    const [person, id] = [freshId(), freshId()];
    const plan = { ...drawn, seed: id };
    await db
      .insertInto('person')
      .values({
        id: person,
        company_id: staff.company,
        login_id: login,
        name: `Candidate ${nth}`,
        roles: 'apprentice',
        search: '',
        created_at: at,
      })
      .execute();
    await db
      .insertInto('sitting')
      .values({
        id,
        company_id: staff.company,
        application_id: application,
        person_id: person,
        scheme,
        part: 'knowledge',
        kind: 'written',
        plan: JSON.stringify(plan),
        content_revision: content.revision,
        phase: 'open',
        made_by: staff.examiner.by.person,
        made_at: at,
      })
      .execute();
    await db
      .insertInto('sitting_event')
      .values({
        sitting_id: id,
        place: 1,
        company_id: staff.company,
        kind: 'opened',
        at,
        detail: JSON.stringify({ kind: 'opened', by: staff.examiner.by.person }),
      })
      .execute();
    const told = answering(plan, { place: 1 + (nth % plan.items.length), sequence: 1, id: mark });
    const [before = '', after = ''] = JSON.stringify({ told: [told] }).split(mark);
    shots.push({
      path: `/company/${staff.company}/exam/${id}/told`,
      headers: { 'content-type': 'application/json', accept: 'application/json', cookie },
      body: [before, after],
    });
  }
  return shots;
}
