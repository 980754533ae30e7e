import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { rolesText, type Role } from '#server/access/roles.ts';
import { found } from '#server/companies/companies.ts';
import { migrate, openDatabase } from '#server/database/open-database.ts';
import { openApplication } from '#server/exams/applications.ts';
import { freshId } from '#server/fresh-id.ts';
import { openAuth } from '#server/logins/auth.ts';
import { create } from '#server/logins/logins.ts';
import { searchText } from '#server/people/folded.ts';
import { openContent } from '#server/content.ts';
import { serve, type Site } from '../../browser/site.ts';

export const password = 'three plain words';
const scheme = 'base-of-wall-installer';

type Records = ReturnType<typeof openDatabase>;

async function person(
  { db, kind, close }: Records,
  company: string,
  { name, username, role }: { name: string; username: string; role: Role },
): Promise<string> {
  const login = await create(await openAuth({ db, kind, close }), { name, password, username });
  if (!login.ok) throw new Error(login.error);
  const id = freshId();
  await db
    .insertInto('person')
    .values({
      id,
      company_id: company,
      login_id: login.value,
      name,
      roles: rolesText([role]),
      search: searchText(name, null),
      created_at: new Date().toISOString(),
    })
    .execute();
  return id;
}

/** A candidate who has passed all but the check by hand, an examiner, and an office that decides. */
async function writeCompany(records: Records): Promise<string> {
  const { db } = records;
  const at = new Date().toISOString();
  const founded = { name: 'Test Walls', office: 'Olga Office', login: freshId(), at };
  const { company, person: office } = await found(db, founded);
  const candidate = await person(records, company, {
    name: 'Ana López',
    username: 'ana',
    role: 'apprentice',
  });
  await person(records, company, {
    name: 'Ed Examiner',
    username: 'examiner',
    role: 'examiner',
  });
  await person(records, company, { name: 'Delia Decides', username: 'delia', role: 'office' });
  const by = {
    company,
    companyName: 'Test Walls',
    isDemo: false,
    person: office,
    name: 'Olga Office',
    roles: ['office'] as const,
    crew: null,
  };
  const content = openContent();
  const opened = await openApplication(db, { by, at }, content, { person: candidate, scheme });
  if (!opened.ok) throw new Error(opened.error.code);
  for (const part of ['knowledge', 'quantities', 'practice-walls']) {
    await db
      .insertInto('part_result')
      .values({
        id: freshId(),
        application_id: opened.value,
        company_id: company,
        person_id: candidate,
        scheme,
        part,
        on_date: at.slice(0, 10),
        result: 'passed',
        share: 0.9,
        examiners: '[]',
        detail: '{}',
        content_revision: content.revision,
        made_at: at,
        released_at: at,
      })
      .execute();
  }
  return company;
}

/** A server with that company; `stop` takes all of it away. */
export async function examinedSite(): Promise<Site & { readonly company: string }> {
  const folder = mkdtempSync(join(tmpdir(), 'underlap-checked-'));
  const records = openDatabase({ folder });
  await migrate(records);
  const company = await writeCompany(records);
  await records.close();
  const site = await serve(undefined, 0, { DATA_DIR: folder });
  const stop = async () => {
    await site.stop();
    rmSync(folder, { recursive: true, force: true });
  };
  return { ...site, stop, company };
}
