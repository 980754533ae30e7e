/** What each person's attempts in one method or family add up to, kept up with every attempt. */
import type { Db } from '../database/open-database.ts';
import type { Ready } from './ready.ts';
import { added, type Tallied } from './tallied.ts';

type Sum = {
  readonly company_id: string;
  readonly person_id: string;
  readonly kind: string;
  readonly about: string;
  readonly attempts: number;
  readonly best: number;
  readonly last_score: number;
  readonly last_at: string;
  readonly tally: Tallied;
};

type One = Pick<Ready, 'id' | 'by' | 'kind' | 'marked' | 'at'>;

/** Of those that came together the one finished last is the last. */
const inTurn = (a: One, b: One): number =>
  compareText(a.at, b.at) ||
  compareText(a.marked.finishedAt, b.marked.finishedAt) ||
  compareText(a.id, b.id);

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const sumOf = ({ by, kind, marked, at }: One): Sum => ({
  company_id: by.company,
  person_id: by.person,
  kind,
  about: marked.about,
  attempts: 1,
  best: marked.score,
  last_score: marked.score,
  last_at: at,
  tally: marked.tally,
});

const both = (one: Sum, other: Sum): Sum => {
  const last = one.last_at > other.last_at ? one : other;
  return {
    ...one,
    attempts: one.attempts + other.attempts,
    best: Math.max(one.best, other.best),
    last_score: last.last_score,
    last_at: last.last_at,
    tally: added(one.tally, other.tally),
  };
};

const keyOf = ({ person_id, kind, about }: Pick<Sum, 'person_id' | 'kind' | 'about'>): string =>
  `${person_id}/${kind}/${about}`;

export function summed(sums: Iterable<Sum>): ReadonlyMap<string, Sum> {
  const kept = new Map<string, Sum>();
  for (const sum of sums) {
    const before = kept.get(keyOf(sum));
    kept.set(keyOf(sum), before ? both(before, sum) : sum);
  }
  return kept;
}

/** To be called in the transaction that keeps the attempts, with none that was kept before. */
export async function add(trx: Db, news: readonly One[]): Promise<void> {
  const persons = [...new Set(news.map(({ by }) => by.person))];
  const fresh = summed(news.toSorted(inTurn).map(sumOf));
  const rows = await trx
    .selectFrom('standing')
    .selectAll()
    .where('person_id', 'in', persons)
    .where('about', 'in', [...new Set(news.map(({ marked }) => marked.about))])
    .execute();
  const old = rows
    .filter((row) => fresh.has(keyOf(row)))
    .map((row) => ({ ...row, tally: JSON.parse(row.tally) as Tallied }));
  await write(trx, [...summed([...old, ...fresh.values()]).values()]);
}

async function write(trx: Db, sums: readonly Sum[]): Promise<void> {
  await trx
    .insertInto('standing')
    .values(sums.map((sum) => ({ ...sum, tally: JSON.stringify(sum.tally) })))
    .onConflict((conflict) =>
      conflict.columns(['person_id', 'kind', 'about']).doUpdateSet((eb) => ({
        attempts: eb.ref('excluded.attempts'),
        best: eb.ref('excluded.best'),
        last_score: eb.ref('excluded.last_score'),
        last_at: eb.ref('excluded.last_at'),
        tally: eb.ref('excluded.tally'),
      })),
    )
    .execute();
}

/** Puts the sums of all of a person's attempts in place of what stands there. */
export async function replace(trx: Db, person: string, all: readonly One[]): Promise<void> {
  await trx.deleteFrom('standing').where('person_id', '=', person).execute();
  const sums = [...summed(all.toSorted(inTurn).map(sumOf)).values()];
  if (sums.length > 0) await write(trx, sums);
}
