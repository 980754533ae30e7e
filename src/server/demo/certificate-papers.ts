/** What the certificates of the invented company have beside their rows: address, paper, and history. */
import type { Insertable } from 'kysely';
import { scopeOf } from '#engine/certificate/scope.ts';
import type { Content } from '#engine/compile/content.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import { passedParts } from '../certificates/issues.ts';
import { freshPublicId } from '../certificates/public-id.ts';
import type { Db } from '../database/open-database.ts';
import type { Tables } from '../database/tables.ts';
import { freshId } from '../fresh-id.ts';

type Event = Insertable<Tables['certificate_event']>;

const reasons: Readonly<Record<string, string>> = {
  suspended: 'The yearly check on site was missed twice.',
  withdrawn: 'Work on three walls was not by the method that was examined.',
};

const granted = (db: Db, company: string) =>
  db
    .selectFrom('certificate')
    .innerJoin('person', 'person.id', 'certificate.person_id')
    .leftJoin('ruling', 'ruling.id', 'certificate.ruling_id')
    .select([
      'certificate.id',
      'certificate.scheme',
      'certificate.state',
      'certificate.made_at',
      'certificate.ruling_id',
      'certificate.replaced_by',
      'person.name',
      'ruling.by_person_id',
    ])
    .where('certificate.company_id', '=', company)
    .execute();

type Row = Awaited<ReturnType<typeof granted>>[number];

function eventsOf(company: string, row: Row, at: string): readonly Event[] {
  const event = (kind: string, when: string): Event => ({
    id: freshId(),
    company_id: company,
    certificate_id: row.id,
    kind,
    by_person_id: row.by_person_id,
    reason: reasons[kind] ?? '',
    at: when,
  });
  return [
    event('granted', row.made_at),
    ...(row.replaced_by === null ? [] : [event('renewed', at)]),
    ...(row.state === 'in-force' ? [] : [event(row.state, at)]),
  ];
}

export async function putOnPaper(
  db: Db,
  { schemes, methods }: Pick<Content, 'schemes' | 'methods'>,
  company: string,
  at: string,
): Promise<void> {
  const byId = new Map<string, Scheme>(schemes);
  await db.transaction().execute(async (trx) => {
    for (const row of await granted(trx, company)) {
      const scheme = byId.get(row.scheme);
      if (!scheme) continue;
      await trx
        .updateTable('certificate')
        .set({ public_id: freshPublicId() })
        .where('id', '=', row.id)
        .execute();
      await trx
        .insertInto('certificate_issue')
        .values({
          certificate_id: row.id,
          number: 1,
          company_id: company,
          name: row.name,
          scope: JSON.stringify(scopeOf(scheme, methods)),
          evidence: JSON.stringify(await passedParts(trx, row.ruling_id)),
          made_at: row.made_at,
        })
        .execute();
      await trx
        .insertInto('certificate_event')
        .values(eventsOf(company, row, at))
        .execute();
    }
  });
}
