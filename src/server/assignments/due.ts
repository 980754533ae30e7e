/** What is due to somebody, with how far they are: all that their phone needs, and no more. */
import type { Subject } from '../attempts/work.ts';
import { besideIndex } from '../database/beside-index.ts';
import type { Db } from '../database/open-database.ts';
import { latestSaid, type SaidOfAttempt } from '../attempts/decisions.ts';
import type { Member } from '../people/member.ts';
import { subjectFrom } from './assignment-list.ts';
import { isStuck } from './stuck.ts';

const day = 24 * 60 * 60 * 1000;
/** So long it stays on the list once it is passed, and so early it is announced. */
const shownDays = 14;
const mostShown = 40;
const mostSaid = 20;

export type DueWork = {
  readonly id: string;
  readonly subject: Subject;
  readonly pass: number;
  readonly count: number;
  readonly tries: number;
  /** Tries that are left; null means as many as one likes. */
  readonly left: number | null;
  readonly good: number;
  readonly best: number | null;
  readonly passedAt: string | null;
  readonly askedAgainAt: string | null;
  readonly isStuck: boolean;
};

export type DueAssignment = {
  readonly id: string;
  readonly title: string;
  readonly note: string | null;
  readonly opens: string;
  readonly due: string | null;
  readonly works: readonly DueWork[];
};

export type Due = {
  readonly at: string;
  readonly assignments: readonly DueAssignment[];
  /** Of their attempts, the latest first. */
  readonly said: readonly SaidOfAttempt[];
};

/** `at` in ISO 8601. What is withdrawn is not due. */
export async function due(
  db: Db,
  { company, person, crew }: Pick<Member, 'company' | 'person' | 'crew'>,
  at: string,
): Promise<Due> {
  const [soon, lately] = [1, -1].map((side) =>
    new Date(Date.parse(at) + side * shownDays * day).toISOString(),
  ) as [string, string];
  // From the person and the crew to what they were given: not through all that the company gave.
  const own = db
    .selectFrom('assignment_for')
    .select('assignment_id')
    .where('person_id', '=', person)
    .union(
      db
        .selectFrom('assignment_for')
        .select('assignment_id')
        .where('crew_id', '=', crew ?? ''),
    );
  const given = await db
    .selectFrom(own.as('own'))
    .innerJoin('assignment', 'assignment.id', 'own.assignment_id')
    .select(['id', 'title', 'note', 'opens_at as opens', 'due_at as due'])
    .where(besideIndex('company_id'), '=', company)
    .where('withdrawn_at', 'is', null)
    .where('opens_at', '<=', soon)
    // Something of it is open, or was until lately.
    .where((where) =>
      where.exists(
        where
          .selectFrom('assignment_work')
          .leftJoin('progress', (join) =>
            join
              .onRef('progress.work_id', '=', 'assignment_work.id')
              .on('progress.person_id', '=', person),
          )
          .select('assignment_work.id')
          .whereRef('assignment_work.assignment_id', '=', 'assignment.id')
          .where((eb) => eb.or([eb('passed_at', 'is', null), eb('passed_at', '>=', lately)])),
      ),
    )
    .orderBy('made_at', 'desc')
    .limit(mostShown)
    .execute();
  const works = await worksFor(
    db,
    person,
    given.map(({ id }) => id),
  );
  return {
    at,
    assignments: given.map((one) => ({ ...one, works: works.get(one.id) ?? [] })),
    said: await latestSaid(db, { company, person }, mostSaid),
  };
}

async function worksFor(db: Db, person: string, assignments: readonly string[]) {
  const works = new Map<string, DueWork[]>();
  if (assignments.length === 0) return works;
  const rows = await db
    .selectFrom('assignment_work as work')
    .innerJoin('assignment', 'assignment.id', 'work.assignment_id')
    .leftJoin('progress', (join) =>
      join.onRef('progress.work_id', '=', 'work.id').on('progress.person_id', '=', person),
    )
    .select([
      'work.id',
      'work.assignment_id',
      'work.kind',
      'work.subject',
      'work.pass',
      'work.count',
      'assignment.tries as most',
      'progress.tries',
      'progress.extra',
      'progress.good',
      'progress.best',
      'progress.passed_at',
      'progress.asked_again_at',
      isStuck.as('stuck'),
    ])
    .where('work.assignment_id', 'in', [...assignments])
    .orderBy('work.place')
    .execute();
  for (const row of rows) {
    const tries = row.tries ?? 0;
    const left = row.most === null ? null : Math.max(0, row.most + (row.extra ?? 0) - tries);
    const work: DueWork = {
      id: row.id,
      subject: subjectFrom(row.kind, row.subject),
      pass: row.pass,
      count: row.count,
      tries,
      left,
      good: row.good ?? 0,
      best: row.best,
      passedAt: row.passed_at,
      askedAgainAt: row.asked_again_at,
      isStuck: Number(row.stuck) === 1,
    };
    works.set(row.assignment_id, [...(works.get(row.assignment_id) ?? []), work]);
  }
  return works;
}
