/**
 * What was given, the newest first, a page at a time. A page starts after an assignment and not at a count,
 * along an index: the last page costs as much as the first.
 */
import { sql } from 'kysely';
import type { Subject } from '../attempts/work.ts';
import type { Db } from '../database/open-database.ts';

export const pageLength = 30;

export type When = 'current' | 'past';

export type AssignmentRow = {
  readonly id: string;
  readonly title: string;
  readonly opens: string;
  readonly due: string | null;
  readonly withdrawn: string | null;
  readonly works: number;
  /** The crews and people whom it is for, by name. */
  readonly to: readonly string[];
};

export type AssignmentPage = {
  readonly assignments: readonly AssignmentRow[];
  /** What to ask for after, for the next page; undefined on the last. */
  readonly next?: string;
};

/** Those that are withdrawn or were due before `at` are past. */
export async function list(
  db: Db,
  company: string,
  { when, at, after }: { readonly when: When; readonly at: string; readonly after?: string },
): Promise<AssignmentPage> {
  const from =
    after === undefined
      ? undefined
      : await db
          .selectFrom('assignment')
          .select(['made_at', 'id'])
          .where('company_id', '=', company)
          .where('id', '=', after)
          .executeTakeFirst();
  let query = db
    .selectFrom('assignment')
    .select((eb) => [
      'id',
      'title',
      'opens_at as opens',
      'due_at as due',
      'withdrawn_at as withdrawn',
      eb
        .selectFrom('assignment_work')
        .select(({ fn }) => fn.countAll().as('works'))
        .whereRef('assignment_work.assignment_id', '=', 'assignment.id')
        .as('works'),
    ])
    .where('company_id', '=', company)
    .orderBy('made_at', 'desc')
    .orderBy('id', 'desc')
    .limit(pageLength + 1);
  query =
    when === 'current'
      ? query
          .where('withdrawn_at', 'is', null)
          .where((eb) => eb.or([eb('due_at', 'is', null), eb('due_at', '>=', at)]))
      : query.where((eb) => eb.or([eb('withdrawn_at', 'is not', null), eb('due_at', '<', at)]));
  if (from) {
    query = query.where(sql<boolean>`(made_at, id) < (${from.made_at}, ${from.id})`);
  }
  const rows = await query.execute();
  const kept = rows.slice(0, pageLength);
  const to = await namesFor(
    db,
    kept.map(({ id }) => id),
  );
  const shown = kept.map((row) => ({
    ...row,
    works: Number(row.works ?? 0),
    to: to.get(row.id) ?? [],
  }));
  const last = shown.at(-1);
  return {
    assignments: shown,
    ...(rows.length > pageLength && last ? { next: last.id } : {}),
  };
}

async function namesFor(db: Db, assignments: readonly string[]) {
  const names = new Map<string, string[]>();
  if (assignments.length === 0) return names;
  const rows = await db
    .selectFrom('assignment_for')
    .leftJoin('crew', 'crew.id', 'assignment_for.crew_id')
    .leftJoin('person', 'person.id', 'assignment_for.person_id')
    .select(['assignment_id', 'crew.name as crew', 'person.name as person'])
    .where('assignment_id', 'in', [...assignments])
    .execute();
  for (const { assignment_id, crew, person } of rows) {
    names.set(assignment_id, [...(names.get(assignment_id) ?? []), crew ?? person ?? '']);
  }
  for (const some of names.values()) some.sort((a, b) => a.localeCompare(b));
  return names;
}

export type GivenWork = {
  readonly id: string;
  readonly subject: Subject;
  readonly pass: number;
  readonly count: number;
};

/** An assignment with its works and whom it is for; undefined where the company has none such. */
export async function one(db: Db, company: string, assignment: string) {
  const row = await db
    .selectFrom('assignment')
    .leftJoin('person', 'person.id', 'assignment.made_by')
    .select([
      'assignment.id',
      'title',
      'note',
      'made_at as madeAt',
      'person.name as madeBy',
      'opens_at as opens',
      'due_at as due',
      'tries',
      'withdrawn_at as withdrawn',
    ])
    .where('assignment.company_id', '=', company)
    .where('assignment.id', '=', assignment)
    .executeTakeFirst();
  if (!row) return undefined;
  const given = await db
    .selectFrom('assignment_for')
    .leftJoin('crew', 'crew.id', 'assignment_for.crew_id')
    .leftJoin('person', 'person.id', 'assignment_for.person_id')
    .select(['assignment_for.crew_id', 'assignment_for.person_id'])
    .select(['crew.name as crewName', 'person.name as personName'])
    .where('assignment_id', '=', assignment)
    .execute();
  return {
    ...row,
    works: await worksOf(db, [assignment]),
    crews: given.flatMap(({ crew_id, crewName }) =>
      crew_id === null ? [] : [{ id: crew_id, name: crewName ?? '' }],
    ),
    persons: given.flatMap(({ person_id, personName }) =>
      person_id === null ? [] : [{ id: person_id, name: personName ?? '' }],
    ),
  };
}

export type OneAssignment = NonNullable<Awaited<ReturnType<typeof one>>>;

async function worksOf(db: Db, assignments: readonly string[]): Promise<readonly GivenWork[]> {
  const rows = await db
    .selectFrom('assignment_work')
    .select(['id', 'kind', 'subject', 'pass', 'count'])
    .where('assignment_id', 'in', [...assignments])
    .orderBy('place')
    .execute();
  return rows.map(({ id, kind, subject, pass, count }) => ({
    id,
    subject: subjectFrom(kind, subject),
    pass,
    count,
  }));
}

export const subjectFrom = (kind: string, subject: string): Subject =>
  ({ kind, ...(JSON.parse(subject) as object) }) as Subject;
