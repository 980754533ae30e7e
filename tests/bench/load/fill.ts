/** A company with any number of people and attempts, written by SQLite alone: quick, and plausible in size. */
import { renameSync, rmSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { migrate, openDatabase, sqliteFile } from '#server/database/open-database.ts';

export type Size = { readonly people: number; readonly perPerson: number };

export const at = '2030-05-01T07:30:00.000Z';
const inCrew = 15;
const assignmentsOfCrew = 10;
const worksOfEach = 2;

const kinds = ['company', 'crew', 'person', 'assignment', 'work', 'attempt', 'decision'] as const;
type Thing = (typeof kinds)[number];

/** In the form of a UUID, in the order of its number. */
export const idOf = (thing: Thing, number: number): string =>
  `0190000${kinds.indexOf(thing)}-0000-7000-8000-${number.toString(16).padStart(12, '0')}`;
const id = (thing: Thing, number: string): string =>
  `printf('0190000${kinds.indexOf(thing)}-0000-7000-8000-%012x', ${number})`;

export const company = idOf('company', 0);
export const crewOf = (person: number): string => idOf('crew', Math.floor(person / inCrew));

/** The newest assignment of somebody's crew, and a work of it. */
export const newestOf = (person: number): string =>
  idOf('assignment', Math.floor(person / inCrew) * assignmentsOfCrew);
export const workOf = (person: number): string =>
  idOf('work', Math.floor(person / inCrew) * assignmentsOfCrew * worksOfEach);

const numbers = (count: number): string =>
  `with recursive n(i) as (select 0 union all select i + 1 from n where i < ${count - 1})`;
const daysAgo = (days: string): string =>
  `strftime('%Y-%m-%dT%H:%M:%fZ', '${at}', '-' || (${days}) || ' days')`;

/** So many characters of JSON in the place of what was played, or of what it adds up to. */
const json = (length: number): string => `'{"played":"${'x'.repeat(length - 13)}"}'`;

function statements({ people, perPerson }: Size): readonly string[] {
  const crews = Math.ceil(people / inCrew);
  const assignments = crews * assignmentsOfCrew;
  const works = assignments * worksOfEach;
  const attempts = people * perPerson;
  const perCrew = assignmentsOfCrew * worksOfEach;
  const name = `substr('aeiounrlst', 1 + (i * 7) % 10, 1) || substr('bcdfglmnprst', 1 + i % 12, 1)`;
  const opened = daysAgo(`30 * (i % ${assignmentsOfCrew})`);
  const work = (person: string) =>
    id('work', `(${person} / ${inCrew}) * ${perCrew} + i % ${perCrew}`);
  const finished = daysAgo(`i % ${perPerson}`);
  return [
    `insert into company (id, name, created_at) values ('${company}', 'Filled', '${at}')`,
    `${numbers(crews)} insert into crew (id, company_id, name, folded_name, created_at)
     select ${id('crew', 'i')}, '${company}', 'Crew ' || i, 'crew ' || i, '${at}' from n`,
    `${numbers(people)} insert into person
       (id, company_id, crew_id, name, number, roles, language, search, created_at)
     select ${id('person', 'i')}, '${company}', ${id('crew', `i / ${inCrew}`)},
       ${name} || ' ' || i, 'B-' || i, 'apprentice', 'es', ${name} || ' ' || i || ' b-' || i, '${at}'
     from n`,
    // Of a crew's assignments the first is the newest: it and the next are under way.
    `${numbers(assignments)} insert into assignment
       (id, company_id, title, made_by, made_at, opens_at, due_at)
     select ${id('assignment', 'i')}, '${company}', 'Work ' || i, '${idOf('person', 0)}',
       ${opened}, ${opened}, ${daysAgo(`30 * (i % ${assignmentsOfCrew}) - 45`)} from n`,
    `${numbers(works)} insert into assignment_work
       (id, assignment_id, place, kind, subject, pass, count)
     select ${id('work', 'i')}, ${id('assignment', `i / ${worksOfEach}`)}, i % ${worksOfEach},
       'mockup', '{"method":"window-sill"}', 90, 1 from n`,
    `${numbers(assignments)} insert into assignment_for (assignment_id, crew_id)
     select ${id('assignment', 'i')}, ${id('crew', `i / ${assignmentsOfCrew}`)} from n`,
    // Everybody tried three of four works of the crew.
    `${numbers(people * perCrew)} insert into progress
       (work_id, person_id, tries, good, best, last_at, passed_at, missed)
     select ${work(`i / ${perCrew}`)}, ${id('person', `i / ${perCrew}`)}, 2, i % 2, 70 + i % 31,
       '${at}', case when i % 2 = 1 then '${at}' end, 1 - i % 2
     from n where i % 4 > 0`,
    `${numbers(people * 8)} insert into standing
       (company_id, person_id, kind, about, attempts, best, last_score, last_at, tally)
     select '${company}', ${id('person', 'i / 8')},
       case when i % 8 < 3 then 'mockup' else 'takeoff' end, 'about-' || (i % 8),
       ${perPerson} / 8, 95, 80 + i % 20, '${at}', ${json(800)} from n`,
    `${numbers(attempts)} insert into attempt (id, company_id, person_id, work_id, kind, about, played,
       finished_at, received_at, content_revision)
     select ${id('attempt', 'i')}, '${company}', ${id('person', `i / ${perPerson}`)},
       case when i % 5 = 0 then ${work(`i / ${perPerson}`)} end,
       'mockup', 'about-' || (i % 8), ${json(60)}, ${finished}, ${finished}, 'r' from n`,
    `${numbers(attempts)} insert into mark
       (attempt_id, content_revision, marked_at, score, outcome, detail)
     select ${id('attempt', 'i')}, 'r', '${at}', 70 + i % 31, 'rework', ${json(30)} from n`,
    `${numbers(people)} insert into decision
       (id, company_id, attempt_id, kind, reason, decided_by, decided_at)
     select ${id('decision', 'i')}, '${company}', ${id('attempt', `i * ${perPerson}`)}, 'comment',
       'Look at the order again.', '${idOf('person', 0)}', '${at}' from n`,
  ];
}

/** Fills a new folder, which is there once it is full. */
export async function fill({ folder }: { readonly folder: string }, size: Size): Promise<void> {
  const place = { folder: `${folder}.filling` };
  rmSync(place.folder, { recursive: true, force: true });
  const records = openDatabase(place);
  await migrate(records);
  await records.close();
  const file = sqliteFile(place.folder);
  const database = new DatabaseSync(file, { enableForeignKeyConstraints: false });
  // Nothing in it is worth saving from a power cut.
  database.exec('pragma journal_mode = delete; pragma journal_mode = off');
  database.exec('pragma synchronous = off; pragma cache_size = -1048576');
  for (const statement of statements(size)) database.exec(statement);
  database.exec('pragma journal_mode = wal');
  database.close();
  renameSync(place.folder, folder);
}
