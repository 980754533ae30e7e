/** What the certificates of the invented company have beside their rows: paper and history. */
import type { Insertable } from 'kysely';
import type { IsoDate } from '#engine/calendar.ts';
import { scopeOf } from '#engine/certificate/scope.ts';
import type { Content } from '#engine/compile/content.ts';
import type { PassedPart } from '../certificates/issues.ts';
import type { Db } from '../database/open-database.ts';
import type { Tables } from '../database/tables.ts';
import { freshId } from '../fresh-id.ts';
import { slices } from './exam-rows.ts';

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

/** The parts passed towards each ruling, all at once. */
async function passedBy(db: Db, company: string): Promise<ReadonlyMap<string, PassedPart[]>> {
  const rows = await db
    .selectFrom('part_result')
    .innerJoin('ruling', 'ruling.application_id', 'part_result.application_id')
    .select(['ruling.id as ruling', 'part', 'part_result.on_date as on'])
    .where('part_result.company_id', '=', company)
    .where('result', '=', 'passed')
    .orderBy('part_result.on_date')
    .execute();
  const parts = rows.map(({ ruling, part, on }) => ({ ruling, part, on: on as IsoDate }));
  return new Map(
    [...Map.groupBy(parts, ({ ruling }) => ruling)].map(([ruling, own]) => [
      ruling,
      own.map(({ part, on }) => ({ part, on })),
    ]),
  );
}

export async function putOnPaper(
  db: Db,
  { schemes, methods }: Pick<Content, 'schemes' | 'methods'>,
  company: string,
  at: string,
): Promise<void> {
  const scopes = new Map<string, string>(
    [...schemes.values()].map((scheme) => [scheme.id, JSON.stringify(scopeOf(scheme, methods))]),
  );
  await db.transaction().execute(async (trx) => {
    const passed = await passedBy(trx, company);
    const rows = await granted(trx, company);
    const issues = rows.map((row) => ({
      certificate_id: row.id,
      number: 1,
      company_id: company,
      name: row.name,
      scope: scopes.get(row.scheme) ?? '{}',
      evidence: JSON.stringify(passed.get(row.ruling_id ?? '') ?? []),
      made_at: row.made_at,
    }));
    const events = rows.flatMap((row) => eventsOf(company, row, at));
    for (const some of slices(issues)) {
      await trx.insertInto('certificate_issue').values(some).execute();
    }
    for (const some of slices(events)) {
      await trx.insertInto('certificate_event').values(some).execute();
    }
  });
}
