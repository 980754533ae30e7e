/**
 * Who is in a state of a qualification, asked of the database: the same as `competenceOf` says of one
 * person, so that a page can be filtered before it is read. A test holds the two to each other.
 */
import { type RawBuilder, sql } from 'kysely';
import { addPeriod, type IsoDate } from '#engine/calendar.ts';
import { trainingSpan } from '#engine/competence/competence.ts';
import { dueThrough, type QualificationState } from '#engine/competence/qualification-state.ts';
import type { Scheme } from '#engine/exam/scheme.ts';

type Condition = RawBuilder<boolean>;
type Where = { readonly company: string; readonly today: IsoDate };

const notReplaced = sql<boolean>`c.replaced_by is null`;

/** `c` is the certificate that speaks: none that is not replaced was granted after it. */
export const speaks = sql<boolean>`${notReplaced} and not exists (
  select 1 from certificate later
  where later.person_id = c.person_id and later.scheme = c.scheme and later.replaced_by is null
    and (later.granted_on > c.granted_on or (later.granted_on = c.granted_on and later.id > c.id)))`;

/** From the few that are so, whom it concerns. */
const fewSay = (company: string, scheme: string, says: Condition): Condition =>
  sql`person.id in (
    select c.person_id from certificate c
    where c.company_id = ${company} and c.scheme = ${scheme} and ${says} and ${speaks})`;

/** Walking people until a page of them is full, as most are so. */
const manySay = (scheme: string, says: Condition): Condition =>
  sql`exists (select 1 from certificate c
    where c.person_id = person.id and c.scheme = ${scheme} and ${says} and ${speaks})`;

const anyCertificate = (scheme: string): Condition =>
  sql`exists (select 1 from certificate c
    where c.person_id = person.id and c.scheme = ${scheme} and ${notReplaced})`;

const holds = (scheme: string, today: IsoDate): Condition =>
  manySay(scheme, sql`c.state = 'in-force' and c.valid_until >= ${today}`);

function inTraining(scheme: Scheme, { company, today }: Where): Condition {
  const applied = sql<boolean>`exists (select 1 from application a
    where a.person_id = person.id and a.company_id = ${company} and a.scheme = ${scheme.id}
      and a.closed_at is null)`;
  const methods = [...scheme.covers.keys()];
  if (methods.length === 0) return applied;
  const since = addPeriod(today, trainingSpan, -1);
  const practised = sql<boolean>`exists (select 1 from standing s
    where s.person_id = person.id and s.company_id = ${company} and s.kind = 'mockup'
      and s.about in (${sql.join(methods)}) and s.last_at >= ${since})`;
  const trains = [practised, ...scheme.requires.map((id) => holds(id, today))];
  return sql`(${applied} or (${sql.join(trains, sql` and `)}))`;
}

/** Whether `person` is in that state of that scheme. */
export function inState(scheme: Scheme, state: QualificationState, where: Where): Condition {
  const { company, today } = where;
  const due = dueThrough(scheme, today);
  const few = (says: Condition) => fewSay(company, scheme.id, says);
  const inForce = sql<boolean>`c.state = 'in-force' and c.valid_until >= ${today}`;
  switch (state) {
    case 'none':
      return sql`not ${anyCertificate(scheme.id)} and not ${inTraining(scheme, where)}`;
    case 'in-training':
      return sql`not ${anyCertificate(scheme.id)} and ${inTraining(scheme, where)}`;
    case 'current':
      return manySay(scheme.id, sql`c.state = 'in-force' and c.valid_until > ${due}`);
    case 'due':
      return few(sql`${inForce} and c.valid_until <= ${due}`);
    case 'lapsed':
      return few(sql`c.state in ('in-force', 'suspended') and c.valid_until < ${today}`);
    case 'suspended':
      return few(sql`c.state = 'suspended' and c.valid_until >= ${today}`);
    case 'withdrawn':
      return few(sql`c.state = 'withdrawn'`);
  }
}
