/** What was decided on somebody's own applications, and whether they can still appeal against it. */
import type { IsoDate } from '#engine/calendar.ts';
import type { Content } from '#engine/compile/content.ts';
import { appealUntil } from '#engine/exam/appeal.ts';
import type { SchemeId } from '#engine/exam/scheme.ts';
import type { Text } from '#engine/text.ts';
import type { Db } from '../database/open-database.ts';
import { dayOf } from '../exams/past.ts';
import type { Act } from '../people/member.ts';
import { type AppealRow, appealsOn, type Ruling, rulingsOn } from './rulings.ts';

export type Outcome = {
  readonly application: string;
  /** In words where the scheme is known still. */
  readonly title: Text | string;
  readonly partTitles: Readonly<Record<string, Text>>;
  readonly rulings: readonly Ruling[];
  readonly appeals: readonly AppealRow[];
  /** The last decision, while it can be appealed against, with the last day for it. */
  readonly appealable: { readonly ruling: string; readonly until: IsoDate } | null;
};

export async function outcomesFor(
  db: Db,
  { by, at }: Act,
  { schemes }: Pick<Content, 'schemes'>,
): Promise<readonly Outcome[]> {
  const rows = await db
    .selectFrom('application')
    .select(['id', 'scheme'])
    .where('company_id', '=', by.company)
    .where('person_id', '=', by.person)
    .where('id', 'in', db.selectFrom('ruling').select('application_id'))
    .orderBy('id', 'desc')
    .limit(20)
    .execute();
  const outcomes: Outcome[] = [];
  for (const { id, scheme: named } of rows) {
    const scheme = schemes.get(named as SchemeId);
    const rulings = await rulingsOn(db, id);
    const appeals = await appealsOn(db, id);
    const last = rulings.at(-1);
    const until = scheme && last && appealUntil(scheme, last.on);
    const isOpen =
      last &&
      until &&
      last.verdict !== 'grant' &&
      last.appeal === null &&
      until >= dayOf(at) &&
      !appeals.some(({ ruling }) => ruling === last.id);
    outcomes.push({
      application: id,
      title: scheme?.title ?? named,
      partTitles: Object.fromEntries((scheme?.parts ?? []).map((part) => [part.id, part.title])),
      rulings,
      appeals,
      appealable: isOpen ? { ruling: last.id, until } : null,
    });
  }
  return outcomes;
}
