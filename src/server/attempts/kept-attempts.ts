/** Attempts to look at: one as it was played, or those for a few works, each with its latest mark. */
import { sql } from 'kysely';
import type { KeptAttempt } from '#engine/marking/kept-attempt.ts';
import type { KeptProblem } from '#engine/takeoff/kept-problem.ts';
import type { KeptRun } from '#engine/written/kept-run.ts';
import type { Outcome } from '#engine/marking/outcome.ts';
import type { Db } from '../database/open-database.ts';

const withMarks = (db: Db, company: string) =>
  db
    .selectFrom('attempt')
    .innerJoin('mark', 'mark.attempt_id', 'attempt.id')
    .innerJoin('person', 'person.id', 'attempt.person_id')
    .select([
      'attempt.id',
      'attempt.person_id as person',
      'person.name',
      'attempt.work_id as work',
      'attempt.kind',
      'attempt.about',
      'attempt.finished_at as finishedAt',
      'attempt.received_at as receivedAt',
      'mark.score',
      'mark.outcome',
    ])
    .where('attempt.company_id', '=', company)
    // The latest mark is the one that stands.
    .where((eb) =>
      eb.not(
        eb.exists(
          eb
            .selectFrom('mark as later')
            .select('later.attempt_id')
            .whereRef('later.attempt_id', '=', 'mark.attempt_id')
            .where((on) =>
              on.or([
                on('later.marked_at', '>', on.ref('mark.marked_at')),
                on.and([
                  on('later.marked_at', '=', on.ref('mark.marked_at')),
                  on('later.content_revision', '>', on.ref('mark.content_revision')),
                ]),
              ]),
            ),
        ),
      ),
    );

export type AttemptLine = {
  readonly id: string;
  readonly person: string;
  readonly work: string | null;
  readonly kind: string;
  readonly about: string;
  readonly finishedAt: string;
  readonly receivedAt: string;
  readonly score: number;
  readonly outcome: string;
};

const mostLines = 100;

type OfWorks = { readonly person: string; readonly works: readonly string[] };

export const forWorksQuery = (db: Db, company: string, { person, works }: OfWorks) =>
  withMarks(db, company)
    .where('attempt.person_id', '=', person)
    .where('attempt.work_id', 'in', ['', ...works])
    .orderBy('attempt.received_at', 'desc')
    .orderBy('attempt.id', 'desc')
    .limit(mostLines);

/** What somebody did for some works, the latest first; at most a hundred. */
export async function forWorks(
  db: Db,
  company: string,
  asked: OfWorks,
): Promise<readonly AttemptLine[]> {
  const rows = await forWorksQuery(db, company, asked).execute();
  return rows.map(({ name: _name, ...row }) => row);
}

export type Played =
  | { readonly kind: 'mockup'; readonly kept: KeptAttempt }
  | { readonly kind: 'takeoff'; readonly kept: KeptProblem }
  | { readonly kind: 'written'; readonly kept: KeptRun };

export type SeenAttempt = Omit<AttemptLine, 'kind'> & { readonly name: string } & Played;

/** One as it was played; undefined where the company has none such. */
export async function seen(
  db: Db,
  company: string,
  attempt: string,
): Promise<SeenAttempt | undefined> {
  const row = await withMarks(db, company)
    .select(['attempt.played', 'mark.content_revision as revision'])
    .where('attempt.id', '=', attempt)
    .executeTakeFirst();
  if (!row) return undefined;
  const { played, revision, kind, ...line } = row;
  const { id, finishedAt, score, outcome } = line;
  const kept = { ...(JSON.parse(played) as object), id };
  if (kind === 'written') return { ...line, kind, kept: { ...kept, at: finishedAt } as KeptRun };
  return kind === 'takeoff'
    ? { ...line, kind, kept: { ...kept, at: finishedAt } as KeptProblem }
    : {
        ...line,
        kind: 'mockup',
        kept: {
          ...kept,
          finished: finishedAt,
          score,
          outcome: outcome as Outcome,
          revision,
        } as KeptAttempt,
      };
}

type InOrder = {
  readonly person?: string | undefined;
  readonly after?: string | undefined;
  readonly most: number;
  /** Received by then. */
  readonly upTo: string;
};

/** In the order in which they were received; undefined where the company has none such as `after`. */
export async function inOrder(
  db: Db,
  company: string,
  { person, after, most, upTo }: InOrder,
): Promise<{ found: readonly AttemptLine[]; next: string | undefined } | undefined> {
  let query = withMarks(db, company)
    .where('attempt.received_at', '<=', upTo)
    .orderBy('attempt.received_at')
    .orderBy('attempt.id')
    .limit(most + 1);
  if (person) query = query.where('attempt.person_id', '=', person);
  if (after) {
    const from = await db
      .selectFrom('attempt')
      .select(['received_at as at', 'id'])
      .where('company_id', '=', company)
      .where('id', '=', after)
      .executeTakeFirst();
    if (!from) return undefined;
    query = query.where(sql<boolean>`(attempt.received_at, attempt.id) > (${from.at}, ${from.id})`);
  }
  const rows = await query.execute();
  const found = rows.slice(0, most).map(({ name: _name, ...row }) => row);
  return { found, next: rows.length > most ? found.at(-1)?.id : undefined };
}
