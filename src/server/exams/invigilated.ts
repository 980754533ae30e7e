/** What the company sees of sittings: those of an application, and one of them while it is watched over. */
import type { Content } from '#engine/compile/content.ts';
import { isOver, type Sitting } from '#engine/exam/sitting.ts';
import type { Grant } from '#engine/exam/sitting-event.ts';
import type { Text } from '#engine/text.ts';
import type { TopicId } from '#engine/written/question.ts';
import type { Db } from '../database/open-database.ts';
import { candidateAbility } from '../numbers/candidate-ability.ts';
import { type MarkedSitting, markSitting, partOf } from './marked-sitting.ts';
import { type FormMatch, keptPlan, type KeptPlan } from './plan.ts';
import { type Known, sittingBy } from './sitting-log.ts';
import { type Clock, clockOf } from './told.ts';

export type SittingOf = {
  readonly id: string;
  readonly part: string;
  readonly phase: string;
  readonly madeAt: string;
  /** Once it was released, or voided after it was begun. */
  readonly result: string | null;
  readonly share: number | null;
};

/** Of one application, the newest first. */
export const sittingsOf = (db: Db, company: string, application: string): Promise<SittingOf[]> =>
  db
    .selectFrom('sitting')
    .leftJoin('part_result', 'part_result.id', 'sitting.id')
    .select([
      'sitting.id',
      'sitting.part',
      'sitting.phase',
      'sitting.made_at as madeAt',
      'part_result.result',
      'part_result.share',
    ])
    .where('sitting.company_id', '=', company)
    .where('sitting.application_id', '=', application)
    .orderBy('sitting.made_at', 'desc')
    .execute();

export type Invigilated = {
  readonly id: string;
  readonly application: string;
  readonly person: string;
  readonly personName: string;
  readonly scheme: string;
  readonly title: Text | undefined;
  readonly clock: Clock;
  readonly hasCode: boolean;
  readonly openedAt: string | undefined;
  readonly answered: number;
  readonly count: number;
  /** Of a renewal that leans to what has faded: what it asks of each topic. */
  readonly asks: readonly { readonly topic: Text; readonly count: number }[] | undefined;
  /** Of a written part: how hard its form is expected to be. */
  readonly match: FormMatch | undefined;
  /** The place, from 1, of the item that was shown last. */
  readonly at: number | undefined;
  readonly absences: readonly { readonly from: string; readonly to: string | undefined }[];
  readonly grants: readonly Granted[];
  readonly voidedBecause: string | undefined;
  /** As it would be marked now, once it is over; nothing before. */
  readonly marked: Pick<MarkedSitting, 'outcome' | 'share' | 'detail'> | undefined;
  /** Of a written part that is over: what it says of the candidate, and how surely. */
  readonly ability: Awaited<ReturnType<typeof candidateAbility>>;
};

export type Granted = { readonly because: string; readonly grant: Grant };

const asksOf = (content: Content, { asks }: KeptPlan): Invigilated['asks'] =>
  asks &&
  Object.entries(asks).flatMap(([id, count]) => {
    const topic = content.topics.get(id as TopicId)?.title;
    return topic ? [{ topic, count }] : [];
  });

/** Undefined where the company has no such sitting. */
export async function invigilated(
  db: Db,
  content: Content,
  company: string,
  { id, at }: { readonly id: string; readonly at: string },
): Promise<Invigilated | undefined> {
  const known = await sittingBy(db, company, id);
  if (!known) return undefined;
  const { row, sitting } = known;
  const person = await db
    .selectFrom('person')
    .select('name')
    .where('id', '=', row.person_id)
    .executeTakeFirstOrThrow();
  const { opened, plan, counts } = sitting;
  const part = partOf(content, known);
  const marked = markedNow(content, known, Date.parse(at));
  return {
    id,
    application: row.application_id,
    person: row.person_id,
    personName: person.name,
    scheme: row.scheme,
    title: part?.title,
    clock: clockOf(sitting, Date.parse(at)),
    hasCode: row.code_digest !== null,
    openedAt: opened && instant(opened.at),
    answered: counts.size,
    count: plan.items.length,
    asks: asksOf(content, keptPlan(row)),
    match: keptPlan(row).match,
    at: lastShown(sitting),
    ...toldIn(sitting),
    marked: marked && { outcome: marked.outcome, share: marked.share, detail: marked.detail },
    ability:
      marked && part?.kind === 'written'
        ? await candidateAbility(
            db,
            content,
            { company, scheme: row.scheme, part: row.part },
            part,
            marked.responses,
          )
        : undefined,
  };
}

const instant = (at: number): string => new Date(at).toISOString();

function lastShown({ log, plan }: Sitting): number | undefined {
  const last = log.findLast((event) => event.kind === 'page-shown');
  return last?.kind === 'page-shown' ? plan.items.indexOf(last.item) + 1 : undefined;
}

function toldIn({
  log,
  absences,
}: Sitting): Pick<Invigilated, 'absences' | 'grants' | 'voidedBecause'> {
  const voided = log.findLast((event) => event.kind === 'voided');
  return {
    absences: absences.map(({ from, to }) => ({
      from: instant(from),
      to: to === undefined ? undefined : instant(to),
    })),
    grants: log.flatMap((event) =>
      event.kind === 'time-granted' ? [{ because: event.because, grant: event.grant }] : [],
    ),
    voidedBecause: voided?.kind === 'voided' ? voided.because : undefined,
  };
}

function markedNow(content: Content, known: Known, now: number): MarkedSitting | undefined {
  const { phase } = known.sitting;
  if (phase === 'voided' || !isOver(known.sitting, now)) return undefined;
  return markSitting(content, known);
}
