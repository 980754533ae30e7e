/** A file of certificates that others issued: looked at, written down, and written out again. */
import type { FileFault } from '#engine/record/import-plan.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { Language } from '#engine/text.ts';
import { appendAll } from '../../audit/audit-trail.ts';
import { inTurn } from '../../companies/in-turn.ts';
import type { Db } from '../../database/open-database.ts';
import { freshId } from '../../fresh-id.ts';
import { csvText } from '../../import/csv-file.ts';
import {
  type How,
  inBlocks,
  isFaulty,
  notLookedAt,
  type WriteFault,
} from '../../import/looked-at.ts';
import { type Act, doerOf } from '../../people/member.ts';
import { declaring, rowOf } from '../declared.ts';
import { type Column, columns, declaredColumns } from './columns.ts';
import { type Plan, plan, wholeOf } from './plan.ts';
import { type Qualification, rowsFrom } from './read-rows.ts';
import { accountsOf, peopleNow } from './whose.ts';

const rulesOf = (act: Act, schemes: readonly Qualification[]) => ({
  schemes,
  today: act.at.slice(0, 10),
});

/** What a file would write down. Writes nothing. */
export async function preview(
  db: Db,
  act: Act,
  schemes: readonly Qualification[],
  text: string,
): Promise<Result<Plan, FileFault>> {
  const read = rowsFrom(text, rulesOf(act, schemes));
  return read.ok ? ok(await plan(db, act.by.company, read.value)) : read;
}

export type Written = {
  readonly added: number;
  /** Those that stood there already. */
  readonly before: number;
};

/** Writes down a file that was looked at, all of it or nothing; sent twice, the second time is no fault. */
export async function write(
  db: Db,
  act: Act,
  schemes: readonly Qualification[],
  text: string,
  how: How,
): Promise<Result<Written, WriteFault<Plan>>> {
  const read = rowsFrom(text, rulesOf(act, schemes));
  if (!read.ok) return read;
  return inTurn(db, act.by.company, async (trx) => {
    const now = await plan(trx, act.by.company, read.value);
    const fresh = now.rows.filter(({ state }) => state === 'new');
    const before = now.rows.filter(({ state }) => state === 'unchanged').length;
    const isDone = fresh.length === 0 && before > 0 && (how.leaveOut || !isFaulty(now));
    if (isDone) return ok({ added: 0, before });
    const unseen = notLookedAt(now, how);
    if (unseen) return fault(unseen);
    const rows = fresh.map(({ person, given }) => rowOf(act, freshId(), person!, given!));
    await inBlocks(rows, (some) => trx.insertInto('declared_certificate').values(some).execute());
    await appendAll(trx, doerOf(act), rows.map(declaring));
    return ok({ added: rows.length, before });
  });
}

const headings = (language: Language): readonly string[] =>
  columns.map((column) => declaredColumns.headingOf(column, language));

/** A file without rows, to fill in. */
export const template = (language: Language): string => csvText(headings(language), []);

/** Everything that is declared of those who have not left, as a file that can be read in again. */
export async function exported(
  db: Db,
  company: string,
  schemes: readonly Qualification[],
  language: Language,
): Promise<string> {
  const rows = await peopleNow(db, company)
    .innerJoin('declared_certificate as one', 'one.person_id', 'person.id')
    .select(['one.title', 'one.issuer', 'one.number as paperNumber', 'one.scheme'])
    .select(['one.issued_on as issuedOn', 'one.valid_until as validUntil'])
    .where('removed_at', 'is', null)
    .orderBy('search')
    .orderBy('person.id')
    .orderBy('issued_on')
    .orderBy('one.id')
    .execute();
  const titleOf = new Map(schemes.map(({ id, title }) => [id, title[language]]));
  const written = new Map(
    rows.map((row) => {
      const { title, issuer, paperNumber: number, scheme, issuedOn, validUntil } = row;
      const cells: Readonly<Record<Column, string | null>> = {
        person: row.name,
        personNumber: row.number,
        account: accountsOf(row)[0] ?? null,
        title,
        issuer,
        number,
        scheme: titleOf.get(scheme ?? '') ?? scheme,
        issuedOn,
        validUntil,
      };
      const whole = wholeOf(row.id, { title, issuer, number, scheme, issuedOn, validUntil });
      return [whole, columns.map((column) => cells[column])] as const;
    }),
  );
  return csvText(headings(language), [...written.values()]);
}
