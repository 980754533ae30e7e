/** All that stands behind an application, for whoever decides on it to read as one sheet. */
import type { IsoDate } from '#engine/calendar.ts';
import type { Content } from '#engine/compile/content.ts';
import type { CheckSheet } from '#engine/exam/check-sheet.ts';
import { lacksIn, type Lack } from '#engine/exam/evidence.ts';
import type { PartKind } from '#engine/exam/scheme.ts';
import { type KeptOut, keptFromDeciding } from '#engine/exam/separation.ts';
import type { PartState } from '#engine/exam/standing.ts';
import { approximate } from '#engine/measure/rational.ts';
import type { Text } from '#engine/text.ts';
import { basisText } from '../checks/basis.ts';
import { signedOf } from '../checks/checks.ts';
import type { Db } from '../database/open-database.ts';
import { type Application, partsFor } from '../exams/applications.ts';
import { dayOf } from '../exams/past.ts';
import type { Act } from '../people/member.ts';
import { askedAgain } from './asked-again.ts';
import { caseOf } from './case-of.ts';
import { appealsOn, openAppeal, rulingsOn } from './rulings.ts';

export type CheckShown = {
  readonly id: string;
  readonly examinerName: string;
  readonly place: number;
  readonly signedAt: string;
  readonly sheet: CheckSheet;
  /** Names its bundle among those of the sheet. */
  readonly basis: string;
};

export type ResultShown = {
  readonly id: string;
  readonly on: IsoDate;
  readonly result: string;
  readonly share: number | null;
  readonly agreement: string | null;
  readonly isReleased: boolean;
  readonly examiners: readonly string[];
  readonly detail: unknown;
  readonly checks: readonly CheckShown[];
};

export type PartShown = {
  readonly id: string;
  readonly kind: PartKind;
  readonly title: Text;
  readonly evidences: Text;
  readonly passMark: number;
  readonly state: PartState;
  /** The latest first. */
  readonly results: readonly ResultShown[];
};

export type InvolvedShown = {
  readonly name: string;
  readonly as: 'trainer' | 'examiner';
  readonly on: IsoDate;
};

async function namesOf(db: Db, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await db
    .selectFrom('person')
    .select(['id', 'name'])
    .where('id', 'in', ['', ...ids])
    .execute();
  return new Map(rows.map(({ id, name }) => [id, name]));
}

type Row = Awaited<ReturnType<typeof resultsOf>>[number];

const resultsOf = (db: Db, { person, scheme }: Application) =>
  db
    .selectFrom('part_result')
    .select([
      'id',
      'part',
      'on_date',
      'result',
      'share',
      'agreement',
      'released_at',
      'examiners',
      'detail',
    ])
    .where('person_id', '=', person)
    .where('scheme', '=', scheme)
    .orderBy('made_at', 'desc')
    .execute();

async function shownOf(
  db: Db,
  company: string,
  row: Row,
  bundles: Map<string, string>,
): Promise<ResultShown> {
  const checks: CheckShown[] = [];
  for (const check of await signedOf(db, company, row.id)) {
    const basis = `${check.content_revision}/${check.scheme}/${check.part}`;
    if (!bundles.has(basis)) bundles.set(basis, await basisText(db, check));
    const { id, examinerName, place, signedAt, sheet } = check;
    checks.push({ id, examinerName, place, signedAt: signedAt ?? '', sheet, basis });
  }
  const ids = JSON.parse(row.examiners) as readonly string[];
  const names = await namesOf(db, ids);
  return {
    id: row.id,
    on: row.on_date as IsoDate,
    result: row.result,
    share: row.share,
    agreement: row.agreement,
    isReleased: row.released_at !== null,
    examiners: ids.map((id) => names.get(id) ?? ''),
    detail: JSON.parse(row.detail) as unknown,
    checks,
  };
}

export type EvidenceSheet = {
  readonly application: Application;
  readonly title: Text;
  readonly note: Text;
  readonly parts: readonly PartShown[];
  readonly lacks: readonly Lack[];
  /** Parts of which the last decision asked for more. */
  readonly asked: readonly string[];
  readonly involved: readonly InvolvedShown[];
  /** Why whoever reads it may not decide on it. */
  readonly keptOut: readonly KeptOut[];
  readonly rulings: Awaited<ReturnType<typeof rulingsOn>>;
  readonly appeals: Awaited<ReturnType<typeof appealsOn>>;
  readonly openAppeal: string | null;
  /** The day as of which it stands: of the first decision where an appeal is open. */
  readonly asOf: IsoDate;
  readonly bundles: Readonly<Record<string, string>>;
};

/** Undefined where its scheme is no longer known. */
export async function evidenceSheet(
  db: Db,
  { by, at }: Act,
  content: Content,
  application: Application,
): Promise<EvidenceSheet | undefined> {
  const rulings = await rulingsOn(db, application.id);
  const appeals = await appealsOn(db, application.id);
  const open = openAppeal(appeals, rulings);
  const asOf = rulings.find(({ id }) => id === open?.ruling)?.on ?? dayOf(at);
  const about = await caseOf(db, content, by.company, application, asOf);
  if (!about) return undefined;
  const { scheme, standing, evidence, involved } = about;
  const bundles = new Map<string, string>();
  const rows = await resultsOf(db, application);
  const parts: PartShown[] = [];
  for (const { id, kind, title, evidences, passMark } of partsFor(scheme, application)) {
    const results: ResultShown[] = [];
    for (const row of rows.filter(({ part }) => part === id)) {
      results.push(await shownOf(db, by.company, row, bundles));
    }
    const { state } = standing.parts.find(({ part }) => part === id)!;
    parts.push({
      id,
      kind,
      title,
      evidences,
      passMark: approximate(passMark.value),
      state,
      results,
    });
  }
  const names = await namesOf(
    db,
    involved.map(({ person }) => person),
  );
  const examiners = evidence.flatMap(({ examiners: some, on }) =>
    some.map((person) => ({ person, as: 'examiner' as const, on })),
  );
  const all = { candidate: application.person, involved: [...involved, ...examiners] };
  return {
    application,
    title: scheme.title,
    note: scheme.note,
    parts,
    lacks: lacksIn(partsFor(scheme, application), standing, evidence),
    asked: await askedAgain(db, application.id),
    involved: involved.map(({ person, as, on }) => ({ name: names.get(person) ?? '', as, on })),
    keptOut: keptFromDeciding(scheme, all, by.person, dayOf(at)),
    rulings,
    appeals,
    openAppeal: open?.id ?? null,
    asOf,
    bundles: Object.fromEntries(bundles),
  };
}
