/** A piece of assigned work, and whether somebody may send an attempt for it. */
import type { Db } from '../database/open-database.ts';
import type { Member } from '../people/member.ts';
import type { Sent } from './sent.ts';

/** Passed with `count` tries of `pass` points of 100 or more. */
export type Work = { readonly id: string; readonly pass: number; readonly count: number };

/** What is to be done: a wall of a method, the one given or any; problems of a family; questions of a topic. */
export type Subject =
  | {
      readonly kind: 'mockup';
      readonly method: string;
      /** None: any wall of the method, another every time. */
      readonly site?: Readonly<Record<string, string>>;
    }
  | { readonly kind: 'takeoff'; readonly family: string }
  /** So many questions of a topic of the bank, picked by seed. */
  | { readonly kind: 'written'; readonly topic: string; readonly questions: number };

/** Why an attempt does not count for the work it names; it is kept all the same. */
export type NotCounted = 'NOT_YOURS' | 'NOT_OPEN' | 'NO_TRIES_LEFT' | 'ANOTHER_TASK' | 'HELPED';

/** The work that attempts name, each as it stands for a member at an instant. */
export async function workFor(
  db: Db,
  { company, person, crew }: Pick<Member, 'company' | 'person' | 'crew'>,
  ids: readonly string[],
) {
  if (ids.length === 0) return new Map<string, never>();
  const rows = await db
    .selectFrom('assignment_work as work')
    .innerJoin('assignment', 'assignment.id', 'work.assignment_id')
    .leftJoin('progress', (join) =>
      join.onRef('progress.work_id', '=', 'work.id').on('progress.person_id', '=', person),
    )
    .select([
      'work.id',
      'work.kind',
      'work.subject',
      'work.pass',
      'work.count',
      'assignment.opens_at',
      'assignment.withdrawn_at',
      'assignment.tries as most',
      'progress.tries',
      'progress.extra',
    ])
    .where('work.id', 'in', [...ids])
    .where('assignment.company_id', '=', company)
    .where((where) =>
      where.exists(
        where
          .selectFrom('assignment_for')
          .select('assignment_for.assignment_id')
          .whereRef('assignment_for.assignment_id', '=', 'assignment.id')
          .where((eb) =>
            eb.or([
              eb('assignment_for.person_id', '=', person),
              ...(crew === null ? [] : [eb('assignment_for.crew_id', '=', crew)]),
            ]),
          ),
      ),
    )
    .execute();
  return new Map(rows.map((row) => [row.id, row]));
}

type Row = Awaited<ReturnType<typeof workFor>> extends Map<string, infer R> ? R : never;

/** Whether what was sent counts for the work; `earlier` are the tries of the same batch. */
export function notCounted(
  row: Row | undefined,
  sent: Sent,
  at: string,
  earlier: number,
): NotCounted | undefined {
  if (!row) return 'NOT_YOURS';
  if (row.withdrawn_at !== null || row.opens_at > at) return 'NOT_OPEN';
  const most = row.most === null ? Infinity : row.most + (row.extra ?? 0);
  if ((row.tries ?? 0) + earlier >= most) return 'NO_TRIES_LEFT';
  const subject = { kind: row.kind, ...(JSON.parse(row.subject) as object) } as Subject;
  if (!isOf(subject, sent)) return 'ANOTHER_TASK';
  return sent.kind === 'mockup' && sent.kept.mode !== 'own' ? 'HELPED' : undefined;
}

function isOf(subject: Subject, sent: Sent): boolean {
  if (subject.kind === 'takeoff') {
    return sent.kind === 'takeoff' && sent.kept.family === subject.family;
  }
  if (subject.kind === 'written') {
    const { topic, questions } = subject;
    return sent.kind === 'written' && sent.kept.topic === topic && sent.kept.count === questions;
  }
  if (sent.kind !== 'mockup' || sent.kept.part) return false;
  const { method, site } = sent.kept.attempt;
  if (method !== subject.method) return false;
  return Object.entries(subject.site ?? {}).every(([question, value]) => site[question] === value);
}
