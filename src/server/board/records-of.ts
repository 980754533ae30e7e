/** What is known of some people, as the engine reads it: a query a table, whoever many they are. */
import { isoDateFrom, type IsoDate } from '#engine/calendar.ts';
import type { Records } from '#engine/competence/competence.ts';
import {
  type CertificateState,
  certificateStates,
  type HeldCertificate,
} from '#engine/competence/qualification-state.ts';
import type { Db } from '../database/open-database.ts';

/** Throws where the records hold something that is not a day. */
export function dayFrom(text: string): IsoDate {
  const read = isoDateFrom(text.slice(0, 10));
  if (!read.ok) throw new Error(`The records hold “${text}” in the place of a day.`);
  return read.value;
}

type Growing = {
  readonly certificates: Map<string, HeldCertificate[]>;
  readonly applied: Set<string>;
  readonly practised: Map<string, IsoDate>;
  readonly sat: Map<string, IsoDate>;
};

/** By person; somebody of whom nothing is known has nothing in it. */
export async function recordsOf(
  db: Db,
  company: string,
  people: readonly string[],
): Promise<ReadonlyMap<string, Records>> {
  const known = new Map<string, Growing>(people.map((id) => [id, nothing()]));
  if (people.length === 0) return known;
  for (const row of await certificatesOf(db, company, people)) {
    const { certificates } = known.get(row.person)!;
    certificates.set(row.scheme, [...(certificates.get(row.scheme) ?? []), certificateFrom(row)]);
  }
  for (const { person, scheme } of await applicationsOf(db, company, people)) {
    known.get(person)!.applied.add(scheme);
  }
  for (const { person, about, last } of await practiceOf(db, company, people)) {
    known.get(person)!.practised.set(about, dayFrom(last));
  }
  for (const { person, scheme, last } of await sittingsOf(db, company, people)) {
    known.get(person)!.sat.set(scheme, dayFrom(last));
  }
  return known;
}

const nothing = (): Growing => ({
  certificates: new Map(),
  applied: new Set(),
  practised: new Map(),
  sat: new Map(),
});

type CertificateRow = Awaited<ReturnType<typeof certificatesOf>>[number];

export const certificateFrom = ({
  id,
  state,
  grantedOn,
  validUntil,
  replacedBy,
}: Omit<CertificateRow, 'person' | 'scheme'>): HeldCertificate => ({
  id,
  state: stateFrom(state),
  grantedOn: dayFrom(grantedOn),
  validUntil: dayFrom(validUntil),
  isReplaced: replacedBy !== null,
});

/** A state that is not known holds nothing: better one person too few on a wall. */
const stateFrom = (text: string): CertificateState =>
  certificateStates.find((state) => state === text) ?? 'suspended';

const certificatesOf = (db: Db, company: string, people: readonly string[]) =>
  db
    .selectFrom('certificate')
    .select([
      'id',
      'person_id as person',
      'scheme',
      'state',
      'granted_on as grantedOn',
      'valid_until as validUntil',
      'replaced_by as replacedBy',
    ])
    .where('person_id', 'in', people)
    .where('company_id', '=', company)
    .where('replaced_by', 'is', null)
    .execute();

const applicationsOf = (db: Db, company: string, people: readonly string[]) =>
  db
    .selectFrom('application')
    .select(['person_id as person', 'scheme'])
    .where('person_id', 'in', people)
    .where('company_id', '=', company)
    .where('closed_at', 'is', null)
    .execute();

const practiceOf = (db: Db, company: string, people: readonly string[]) =>
  db
    .selectFrom('standing')
    .select(['person_id as person', 'about', 'last_at as last'])
    .where('person_id', 'in', people)
    .where('company_id', '=', company)
    .where('kind', '=', 'mockup')
    .execute();

const sittingsOf = (db: Db, company: string, people: readonly string[]) =>
  db
    .selectFrom('part_result')
    .select(({ fn }) => ['person_id as person', 'scheme', fn.max('on_date').as('last')])
    .where('person_id', 'in', people)
    .where('company_id', '=', company)
    .where('result', '!=', 'void')
    .groupBy(['person_id', 'scheme'])
    .execute();
