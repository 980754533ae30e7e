/** Who might go to a job, and what each would still have to show for what they do not hold. */
import { addPeriod, type IsoDate } from '#engine/calendar.ts';
import { governing, type HeldCertificate } from '#engine/competence/qualification-state.ts';
import { renewalPhase, renewalStanding } from '#engine/exam/renewal.ts';
import type { PartId, Scheme, SchemeId } from '#engine/exam/scheme.ts';
import { type Standing, standingOf, type Tried } from '#engine/exam/standing.ts';
import type { Candidate } from '#engine/job-fit/job.ts';
import { certificateFrom, dayFrom } from '../board/records-of.ts';
import type { Db } from '../database/open-database.ts';

export type Span = { readonly from: IsoDate; readonly through: IsoDate };

export type Someone = {
  readonly id: string;
  readonly name: string;
  readonly crew: string | null;
  readonly crewName: string | null;
};

export type Known = Someone & { readonly candidate: Candidate };

export type Search = {
  readonly company: string;
  readonly at: string;
  readonly span: Span;
  /** This job, whose own people are free for it. */
  readonly job: string;
  readonly schemes: readonly Scheme[];
  readonly travelOf: (crew: string | null) => number;
};

/**
 * Those who are free on every day of the job: everybody, or only those who hold one of the qualifications.
 * Who was sent to another job on one of its days is not free.
 */
export async function candidates(
  db: Db,
  search: Search,
  among: 'everybody' | ReadonlySet<string>,
): Promise<readonly Known[]> {
  const certificates = await certificatesOf(db, search);
  const tried = among === 'everybody' ? await triedBy(db, search) : new Map<string, never>();
  const people = await freePeople(db, search);
  const nothing: ReadonlyMap<string, readonly HeldCertificate[]> = new Map();
  return people.flatMap((one) => {
    const held = certificates.get(one.id) ?? nothing;
    const holds = holdsThrough(held, search.span);
    if (among !== 'everybody' && ![...among].some((id) => holds.has(id))) return [];
    const partsLeft =
      among === 'everybody' ? partsLeftOf(search, held, holds, tried.get(one.id) ?? []) : new Map();
    const candidate = { id: one.id, holds, travel: search.travelOf(one.crew), partsLeft };
    return [{ ...one, candidate }];
  });
}

/** On its last day a certificate still holds. */
function holdsThrough(
  held: ReadonlyMap<string, readonly HeldCertificate[]>,
  { from, through }: Span,
): ReadonlySet<string> {
  const found = new Set<string>();
  for (const [scheme, all] of held) {
    const speaks = governing(all);
    if (!speaks || speaks.state !== 'in-force') continue;
    if (speaks.validUntil >= through && speaks.grantedOn <= from) found.add(scheme);
  }
  return found;
}

type Try = Tried & { readonly scheme: string };

function partsLeftOf(
  { schemes, at }: Search,
  held: ReadonlyMap<string, readonly HeldCertificate[]>,
  holds: ReadonlySet<string>,
  tries: readonly Try[],
): ReadonlyMap<string, number> {
  const today = dayFrom(at);
  const left = new Map<string, number>();
  // What is required is counted by itself, so here it counts as held.
  const all = new Map(schemes.map(({ id }) => [id, addPeriod(today, { count: 1, unit: 'years' })]));
  for (const scheme of schemes) {
    const speaks = governing(held.get(scheme.id) ?? []);
    const isBarred = speaks !== undefined && speaks.state !== 'in-force';
    if (holds.has(scheme.id) || isBarred) continue;
    const tried = tries.filter(({ scheme: id }) => id === scheme.id);
    left.set(scheme.id, stillToPass(scheme, { tried, held: all }, speaks, today));
  }
  return left;
}

type Past = { readonly tried: readonly Tried[]; readonly held: ReadonlyMap<SchemeId, IsoDate> };

function stillToPass(
  scheme: Scheme,
  past: Past,
  speaks: HeldCertificate | undefined,
  today: IsoDate,
): number {
  const open = ({ parts }: Standing): number =>
    parts.filter(({ state }) => state.kind !== 'passed').length;
  const until = speaks?.validUntil;
  const canRenew = until && ['due', 'late'].includes(renewalPhase(scheme, until, today));
  const standing = canRenew
    ? renewalStanding(scheme, past, until, today)
    : standingOf(scheme, past, today);
  // A decision is still to come even where every part is passed.
  return Math.max(1, open(standing));
}

const freePeople = (db: Db, { company, span, job }: Search): Promise<readonly Someone[]> =>
  db
    .selectFrom('person')
    .leftJoin('crew', 'crew.id', 'person.crew_id')
    .select(['person.id', 'person.name', 'person.crew_id as crew', 'crew.name as crewName'])
    .where('person.company_id', '=', company)
    .where('person.left_at', 'is', null)
    .where('person.erased_at', 'is', null)
    .where((where) =>
      where.not(
        where.exists(
          where
            .selectFrom('job_person')
            .innerJoin('job', 'job.id', 'job_person.job_id')
            .select('job.id')
            .whereRef('job_person.person_id', '=', 'person.id')
            .where('job.id', '!=', job)
            .where('job.closed_at', 'is', null)
            .where('job.starts_on', '<=', span.through)
            .where('job.ends_on', '>=', span.from),
        ),
      ),
    )
    .execute();

async function certificatesOf(db: Db, { company, schemes }: Search) {
  const rows = await db
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
    .where('company_id', '=', company)
    .where(
      'scheme',
      'in',
      schemes.map(({ id }) => id as string),
    )
    .where('replaced_by', 'is', null)
    .execute();
  const found = new Map<string, Map<string, HeldCertificate[]>>();
  for (const { person, scheme, ...row } of rows) {
    const of = found.get(person) ?? new Map<string, HeldCertificate[]>();
    of.set(scheme, [...(of.get(scheme) ?? []), certificateFrom(row)]);
    found.set(person, of);
  }
  return found;
}

const results = ['passed', 'failed', 'void'] as const;

async function triedBy(db: Db, { company }: Search): Promise<ReadonlyMap<string, readonly Try[]>> {
  const rows = await db
    .selectFrom('part_result')
    .select(['person_id as person', 'scheme', 'part', 'on_date as on', 'result'])
    .where('company_id', '=', company)
    .where('released_at', 'is not', null)
    .execute();
  const found = new Map<string, Try[]>();
  for (const { person, scheme, part, on, result } of rows) {
    const one: Try = {
      scheme,
      part: part as PartId,
      on: dayFrom(on),
      result: results.find((known) => known === result) ?? 'void',
    };
    found.set(person, [...(found.get(person) ?? []), one]);
  }
  return found;
}
