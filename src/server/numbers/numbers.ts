/**
 * The numbers of a part, kept until another result or another content comes: kept by what they are made
 * from, so that every process comes to the same and none has to tell another.
 */
import type { Content } from '#engine/compile/content.ts';
import type { Part, Scheme } from '#engine/exam/scheme.ts';
import type { Db } from '../database/open-database.ts';
import { firstTries, type PartKey, type Sat, satIn } from './answers.ts';
import { type PartNumbers, partNumbers } from './part-numbers.ts';
import { passShare, wholeScheme, type WholeScheme } from './pass-share.ts';

type Kept = { readonly stamp: string; readonly numbers: Promise<PartNumbers> };

const mostKept = 60;
const kept = new Map<string, Kept>();

/** One at a time asks; others wait for the same. */
export async function numbersOf(
  db: Db,
  { revision }: Pick<Content, 'revision'>,
  key: PartKey,
  part: Part,
): Promise<PartNumbers> {
  const name = JSON.stringify([key.company, key.scheme, key.part]);
  const stamp = `${revision}/${await countOf(db, key)}`;
  const found = kept.get(name);
  if (found?.stamp === stamp) return found.numbers;
  const numbers = partNumbers(db, key, part);
  kept.delete(name);
  kept.set(name, { stamp, numbers });
  for (const oldest of kept.keys()) {
    if (kept.size <= mostKept) break;
    kept.delete(oldest);
  }
  // What failed is asked for anew.
  numbers.catch(() => kept.delete(name));
  return numbers;
}

/** Rows are added and released, and never taken back: their numbers tell one state from another. */
async function countOf(db: Db, { company, scheme, part }: PartKey): Promise<string> {
  const results = await db
    .selectFrom('part_result')
    .select(({ fn }) => [fn.countAll().as('all'), fn.count('released_at').as('released')])
    .where('company_id', '=', company)
    .where('scheme', '=', scheme)
    .where('part', '=', part)
    .where('result', '!=', 'void')
    .executeTakeFirstOrThrow();
  const answers = await db
    .selectFrom('item_response')
    .select(({ fn }) => fn.countAll().as('all'))
    .where('company_id', '=', company)
    .where('scheme', '=', scheme)
    .where('part', '=', part)
    .executeTakeFirstOrThrow();
  return [results.all, results.released, answers.all].map(Number).join('/');
}

export type SchemeLine = {
  readonly id: string;
  readonly title: Scheme['title'];
  /** Of those who sat every part. */
  readonly whole: WholeScheme;
  readonly parts: readonly (Pick<Part, 'id' | 'kind' | 'title'> & {
    readonly sat: number;
    readonly passed: PartNumbers['passed'];
    readonly precision: PartNumbers['precision'] | undefined;
  })[];
};

/** Every scheme with its parts. What takes a fit is worked out for written parts alone. */
export async function overview(
  db: Db,
  content: Pick<Content, 'revision' | 'schemes'>,
  company: string,
): Promise<readonly SchemeLine[]> {
  const lines: SchemeLine[] = [];
  for (const { id, title, parts } of content.schemes.values()) {
    const own: SchemeLine['parts'][number][] = [];
    const firsts: (readonly Sat[])[] = [];
    for (const part of parts) {
      const key = { company, scheme: id, part: part.id };
      const first = firstTries(await satIn(db, key));
      firsts.push(first);
      own.push({
        id: part.id,
        kind: part.kind,
        title: part.title,
        sat: first.length,
        passed: passShare(first),
        precision:
          part.kind === 'written' ? (await numbersOf(db, content, key, part)).precision : undefined,
      });
    }
    lines.push({ id, title, whole: wholeScheme(firsts), parts: own });
  }
  return lines;
}
