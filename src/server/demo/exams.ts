/**
 * The examinations of the invented company: applications, parts, answers, decisions and certificates in
 * the states that there are. What is sat and when is in `careers.ts`, how it is answered in
 * `exam-answers.ts`.
 */
import type { IsoDate } from '#engine/calendar.ts';
import type { Content } from '#engine/compile/content.ts';
import { renewedUntil, validUntil } from '#engine/exam/renewal.ts';
import { renewalParts, type Scheme, type WrittenPart } from '#engine/exam/scheme.ts';
import { addPeriod } from '#engine/calendar.ts';
import { randomFrom, whole } from '#engine/random.ts';
import type { Language, Text } from '#engine/text.ts';
import { freshPublicId } from '../certificates/public-id.ts';
import type { Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';
import { Careers, daysBefore, type PartDone, type Plan, plansFor } from './careers.ts';
import { putOnPaper } from './certificate-papers.ts';
import type { DemoPerson } from './people.ts';
import { blankRows, type ExamRows, write } from './exam-rows.ts';

export type DemoCandidate = {
  readonly id: string;
  readonly crew: string | null;
  readonly person: DemoPerson;
};

type Staff = {
  readonly offices: readonly string[];
  readonly trainers: readonly DemoCandidate[];
  readonly examiners: readonly string[];
};

type Making = {
  readonly content: Content;
  readonly company: string;
  readonly today: IsoDate;
  readonly staff: Staff;
};

/** `guests` take the written part of the first scheme and leave. */
export async function makeExams(
  db: Db,
  making: Making,
  learners: readonly DemoCandidate[],
  guests: readonly DemoCandidate[],
): Promise<void> {
  const rows = blankRows();
  const careers = new Careers(making.content);
  for (const guest of guests) asGuest(rows, careers, making, guest);
  for (const [place, learner] of learners.entries()) {
    if (learner.person.leftDaysAgo !== undefined) continue;
    const held = new Map<string, IsoDate>();
    for (const plan of plansFor(making.content, { place, ability: learner.person.ability })) {
      if (!plan.scheme.requires.every((id) => held.has(id))) break;
      const until = follow(rows, careers, making, learner, plan);
      if (until) held.set(plan.scheme.id, until);
    }
  }
  await write(db, rows);
  await putOnPaper(db, making.content, making.company, noon(making.today));
}

const noon = (day: string): string => `${day}T18:00:00.000Z`;

const sitterOf = ({ person }: DemoCandidate, today: IsoDate) => ({
  seed: person.number,
  ability: person.ability + 0.3,
  language: person.language,
  today,
});

function asGuest(rows: ExamRows, careers: Careers, making: Making, guest: DemoCandidate): void {
  const scheme = [...making.content.schemes.values()].find(
    ({ requires, parts }) => requires.length === 0 && parts.some(({ kind }) => kind === 'written'),
  );
  if (!scheme) return;
  const left = guest.person.leftDaysAgo ?? 0;
  // On the day before they left, at the latest.
  const on = daysBefore(making.today, left + 1);
  const application = apply(rows, making, guest, scheme, { on, renews: null });
  application.closed_at = noon(daysBefore(making.today, left));
  const isWritten = (part: Scheme['parts'][number]): part is WrittenPart => part.kind === 'written';
  const only = {
    ...scheme,
    parts: scheme.parts.filter(isWritten),
    tries: { ...scheme.tries, most: 1 },
  };
  const sitter = { ...sitterOf(guest, making.today) };
  const [done] = careers.taken(sitter, { scheme: only, began: left + 7, parts: 1 });
  if (done) keepPart(rows, making, guest, application.id, scheme, { ...done, on });
}

/** The last day of the certificate that the plan ends with, where it does. */
function follow(
  rows: ExamRows,
  careers: Careers,
  making: Making,
  candidate: DemoCandidate,
  plan: Plan,
): IsoDate | undefined {
  const { scheme, carriedOver, began } = plan;
  const before =
    carriedOver === undefined
      ? undefined
      : carryOver(rows, making, candidate, scheme, daysBefore(making.today, carriedOver));
  const held = before && (before.valid_until as IsoDate);
  if (began === undefined) return held;
  const on = daysBefore(making.today, began);
  const application = apply(rows, making, candidate, scheme, { on, renews: before?.id ?? null });
  const done = careers.taken(sitterOf(candidate, making.today), plan);
  for (const part of done) keepPart(rows, making, candidate, application.id, scheme, part);
  const asked = before ? renewalParts(scheme) : scheme.parts;
  const verdict = verdictOn(asked.length, done, scheme);
  const last = done.at(-1);
  if (!verdict || !last || plan.isUndecided) return held;
  const random = randomFrom(`${candidate.person.number}/${scheme.id}/ruling`);
  const decided = addPeriod(last.on, { count: whole(random, 2, 9), unit: 'days' });
  if (decided >= making.today) return held;
  const until = held ? renewedUntil(scheme, held, decided) : validUntil(scheme, decided);
  const { language } = candidate.person;
  const ruling = rule(rows, making, application.id, { verdict, decided, until, done, language });
  application.closed_at = noon(decided);
  if (verdict !== 'grant') return held;
  const certificate = {
    id: freshId(),
    company_id: making.company,
    person_id: candidate.id,
    scheme: scheme.id,
    ruling_id: ruling,
    granted_on: decided,
    valid_until: until,
    state: plan.state ?? 'in-force',
    replaced_by: null,
    public_id: freshPublicId(),
    made_at: noon(decided),
  };
  rows.certificate.push(certificate);
  if (before) before.replaced_by = certificate.id;
  return until;
}

const verdictOn = (
  asked: number,
  done: readonly PartDone[],
  scheme: Scheme,
): 'grant' | 'refuse' | undefined => {
  const passed = done.filter(({ result }) => result === 'passed').length;
  if (passed === asked) return 'grant';
  const last = done.at(-1);
  const tries = done.filter(({ part }) => part.id === last?.part.id).length;
  return last?.result === 'failed' && tries === scheme.tries.most ? 'refuse' : undefined;
};

function carryOver(
  rows: ExamRows,
  { company }: Making,
  candidate: DemoCandidate,
  scheme: Scheme,
  on: IsoDate,
) {
  const certificate: ExamRows['certificate'][number] = {
    id: freshId(),
    company_id: company,
    person_id: candidate.id,
    scheme: scheme.id,
    ruling_id: null,
    granted_on: on,
    valid_until: validUntil(scheme, on),
    state: 'in-force',
    replaced_by: null,
    public_id: freshPublicId(),
    made_at: noon(on),
  };
  rows.certificate.push(certificate);
  return certificate;
}

function apply(
  rows: ExamRows,
  { company, staff }: Making,
  { id }: DemoCandidate,
  scheme: Scheme,
  { on, renews }: { readonly on: IsoDate; readonly renews: string | null },
) {
  const application: ExamRows['application'][number] = {
    id: freshId(),
    company_id: company,
    person_id: id,
    scheme: scheme.id,
    renews,
    made_by: staff.offices[0]!,
    made_at: noon(on),
    closed_at: null,
  };
  rows.application.push(application);
  return application;
}

function keepPart(
  rows: ExamRows,
  { content, company, staff }: Making,
  candidate: DemoCandidate,
  application: string,
  scheme: Scheme,
  { part, on, result, share, answers }: PartDone,
): void {
  const id = freshId();
  const person = candidate.id;
  const examiners = part.kind === 'hands-on' ? staff.examiners.slice(0, part.examiners) : [];
  rows.part_result.push({
    id,
    application_id: application,
    company_id: company,
    person_id: person,
    scheme: scheme.id,
    part: part.id,
    on_date: on,
    result,
    share,
    examiners: JSON.stringify(examiners),
    agreement: examiners.length === 2 ? (result === 'passed' ? '37/40' : '9/10') : null,
    detail: '{}',
    content_revision: content.revision,
    made_at: noon(on),
    released_at: noon(on),
  });
  for (const { item, topic, wasAnswered, isRight } of answers) {
    rows.item_response.push({
      sitting_id: id,
      item,
      company_id: company,
      person_id: person,
      scheme: scheme.id,
      part: part.id,
      topic,
      on_date: on,
      was_answered: Number(wasAnswered),
      is_right: Number(isRight),
    });
  }
  const trainer = staff.trainers.find(({ crew }) => crew !== null && crew === candidate.crew)?.id;
  const involved = [
    ...examiners.map((one) => ({ one, role: 'examiner' })),
    ...(trainer ? [{ one: trainer, role: 'trainer' }] : []),
  ];
  for (const { one, role } of involved) {
    const row = { company_id: company, candidate_id: person, person_id: one, role, on_date: on };
    rows.involvement.set(`${person}/${one}/${role}/${on}`, row);
  }
}

type Ruled = {
  readonly verdict: 'grant' | 'refuse';
  readonly decided: IsoDate;
  readonly until: IsoDate;
  readonly done: readonly PartDone[];
  readonly language: Language;
};

/** As whoever decides would write it to the candidate. */
const usedUp: Text = {
  en: 'All tries of a part are used up.',
  es: 'Se agotaron los intentos de una parte.',
};

function rule(
  rows: ExamRows,
  { company, staff }: Making,
  application: string,
  { verdict, decided, until, done, language }: Ruled,
): string {
  const id = freshId();
  rows.ruling.push({
    id,
    company_id: company,
    application_id: application,
    appeal_id: null,
    verdict,
    by_person_id: staff.offices[staff.offices.length - 1]!,
    on_date: decided,
    because: verdict === 'refuse' ? usedUp[language] : '',
    asks: '[]',
    evidence: JSON.stringify(done.map(({ part, on, share }) => ({ part: part.id, on, share }))),
    until: verdict === 'grant' ? until : null,
    made_at: noon(decided),
  });
  return id;
}
