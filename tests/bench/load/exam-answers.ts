/**
 * What is sent while an examination is measured: of every candidate all answers to the form that was drawn
 * for them, in a sitting that was set up and begun as any other is.
 */
import { createHmac, randomBytes } from 'node:crypto';
import { sql } from 'kysely';
import type { Database, Db } from '#server/database/open-database.ts';
import { secret } from '#server/database/secret.ts';
import { freshId } from '#server/fresh-id.ts';
import { sessionCookie } from '#server/logins/session.ts';
import { examStaff } from '../../server/exams/candidate.ts';
import { answering, begun } from '../../server/exams/sittings.ts';
import { addPerson } from '../../server/people/staff.ts';
import type { Shot } from './client.ts';

const mark = 'identifier';

/** A login and its session, written down: 1000 passwords, to make and to sign in, would take minutes. */
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

/** All first answers, then all second ones and so on, as 500 people in one hall give them. */
export async function answersOf(records: Database, candidates: number): Promise<readonly Shot[]> {
  const staff = await examStaff(records.db);
  const key = await secret(records.db, 'sessions');
  const at = new Date().toISOString();
  const rounds: Shot[][] = [];
  for (let nth = 0; nth < candidates; nth += 1) {
    const name = `Candidate ${nth}`;
    const [person, { login, cookie }] = [freshId(), await signedIn(records.db, key)];
    await addPerson(records, staff.company, { id: person, name, login, roles: 'apprentice' });
    const by = { ...staff.candidate.by, person, name };
    const sat = await begun(records, {
      ...staff,
      examiner: { ...staff.examiner, at },
      office: { ...staff.office, at },
      candidate: { by, at },
    });
    for (let place = 1; place <= sat.plan.items.length; place += 1) {
      const told = answering(sat.plan, { place, sequence: place, id: mark });
      const [before = '', after = ''] = JSON.stringify({ told: [told] }).split(mark);
      (rounds[place - 1] ??= []).push({
        path: `/company/${staff.company}/exam/${sat.id}/told`,
        headers: { 'content-type': 'application/json', accept: 'application/json', cookie },
        body: [before, after],
      });
    }
  }
  return rounds.flat();
}
