/** What stands in an address: found among what the invented company has, or made where it has none. */
import { found } from '#server/companies/companies.ts';
import { openContent } from '#server/content.ts';
import { freshId } from '#server/fresh-id.ts';
import { keep } from '#server/jobs/jobs.ts';
import { open } from '#server/numbers/panels.ts';
import { make } from '#server/people/cards.ts';
import { addPerson } from '../../server/people/staff.ts';
import { firstWith, letIn, login, type There } from './people-there.ts';

const content = openContent();
import { part, scheme } from './parts-there.ts';

type Known = Readonly<Record<string, string>>;

const dayFromNow = (days: number): string =>
  new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);

async function certificates(there: There): Promise<Known> {
  const { records, company } = there;
  const issued = await records.db
    .selectFrom('certificate')
    .innerJoin('person', 'person.id', 'certificate.person_id')
    .select(['certificate.id', 'certificate.person_id', 'certificate.public_id', 'state'])
    .where('certificate.company_id', '=', company)
    .where('certificate.ruling_id', 'is not', null)
    .where('person.left_at', 'is', null)
    .orderBy('certificate.id')
    .execute();
  const held = issued.find(({ state }) => state === 'in-force')!;
  const suspended = issued.find(({ state }) => state === 'suspended')!;
  await letIn(there, 'holder', held.person_id);
  const refused = await records.db
    .selectFrom('ruling')
    .innerJoin('application', 'application.id', 'ruling.application_id')
    .select('application.person_id')
    .where('ruling.company_id', '=', company)
    .where('verdict', '=', 'refuse')
    .executeTakeFirstOrThrow();
  await letIn(there, 'refused', refused.person_id);
  return {
    certificate: held.id,
    public: held.public_id,
    publicSuspended: suspended.public_id,
  };
}

async function firstOf(there: There): Promise<Known> {
  const { records, company } = there;
  const { db } = records;
  const crew = await db
    .selectFrom('crew')
    .select('id')
    .where('company_id', '=', company)
    .executeTakeFirstOrThrow();
  const assignment = await db
    .selectFrom('assignment')
    .select('id')
    .where('company_id', '=', company)
    .where('withdrawn_at', 'is', null)
    .orderBy('id', 'desc')
    .executeTakeFirstOrThrow();
  const apprentice = await firstWith(db, company, 'apprentice');
  const attempt = await db
    .selectFrom('attempt')
    .select('id')
    .where('person_id', '=', apprentice.by.person)
    .where('kind', '=', 'mockup')
    .orderBy('id', 'desc')
    .executeTakeFirstOrThrow();
  const question = await db
    .selectFrom('item_response')
    .select('item')
    .where('company_id', '=', company)
    .where('part', '=', part)
    .where('scheme', '=', scheme)
    .executeTakeFirstOrThrow();
  return {
    crew: crew.id,
    assignment: assignment.id,
    person: apprentice.by.person,
    attempt: attempt.id,
    question: encodeURIComponent(question.item),
  };
}

async function madeFor(there: There): Promise<Known> {
  const { records, company } = there;
  const { db } = records;
  const office = await firstWith(db, company, 'office');
  const examiner = await firstWith(db, company, 'examiner');
  const apprentice = await firstWith(db, company, 'apprentice');
  const job = freshId();
  const given = {
    title: 'Mill Road school, east wing',
    place: 'Harrow',
    startsOn: dayFromNow(21),
    endsOn: dayFromNow(60),
    note: '',
    roles: [
      { title: 'Lead', count: '1', needs: ['crew-lead'] },
      { title: 'Installer', count: '4', needs: [scheme] },
    ],
    travel: [],
  };
  const kept = await keep(db, office, [...content.schemes.keys()], job, given);
  if (!kept.ok) throw new Error(JSON.stringify(kept.error));
  const panel = await open(db, examiner, content, { scheme, part });
  if (!panel.ok) throw new Error(panel.error);
  const [card] = await make(db, office, [apprentice.by.person]);
  return { job, panel: panel.value, card: card!.secret };
}

/** Somebody who works for two companies is asked for which. */
async function workForTwo(there: There): Promise<void> {
  const { records, company } = there;
  const name = 'Teresa Dintel';
  const theirs = await login(there, 'two', name);
  await addPerson(records, company, { id: freshId(), name, login: theirs, roles: 'trainer' });
  const at = new Date().toISOString();
  await found(records.db, { name: 'Second Walls', office: name, login: theirs, at, isDemo: true });
}

export async function knownThere(there: There): Promise<Known> {
  await workForTwo(there);
  return {
    company: there.company,
    ...(await firstOf(there)),
    ...(await certificates(there)),
    ...(await madeFor(there)),
  };
}
