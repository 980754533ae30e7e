/**
 * Panels that say where a pass mark should lie: each judge estimates for each question of one form how
 * many of a hundred people who are only just fit would get it right. Nobody sees what others said before
 * the round is over. What a judge handed in stays; handed in again, the later one counts.
 */
import type { Content } from '#engine/compile/content.ts';
import { drawForm } from '#engine/exam/form.ts';
import type { WrittenPart } from '#engine/exam/scheme.ts';
import { approximate } from '#engine/measure/rational.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { panelVerdict } from '#engine/statistics/examiners-verdict.ts';
import { append } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { shareRight } from '../exams/measured-share.ts';
import { freshId } from '../fresh-id.ts';
import { type Act, doerOf } from '../people/member.ts';
import type { PartKey } from './answers.ts';
import { partNamed } from './part-numbers.ts';
import { retiredIn } from './retire.ts';

/** Per cent by item; each from 0 to 100. */
export type Ratings = Readonly<Record<string, number>>;

/** `ABSENT`: no such panel, or part. `CLOSED`. `UNDRAWN`: no form can be drawn. `INCOMPLETE`: see `rate`. */
export type PanelFault = 'ABSENT' | 'CLOSED' | 'UNDRAWN' | 'INCOMPLETE' | 'NOBODY';

/** On one form of the part as it is drawn today, without what is retired. */
export async function open(
  db: Db,
  act: Act,
  content: Content,
  { scheme, part }: Pick<PartKey, 'scheme' | 'part'>,
): Promise<Result<string, PanelFault>> {
  const named = partNamed(content, scheme, part);
  if (named?.part.kind !== 'written') return fault('ABSENT');
  const id = freshId();
  const retired = new Set((await retiredIn(db, act.by.company)).map(({ item }) => item));
  const { company, person } = act.by;
  const expected = await shareRight(db, { company, scheme, part });
  const items = itemsFor(content, named.part, id, { retired, expected });
  if (!items) return fault('UNDRAWN');
  return inTurn(db, company, async (trx) => {
    await trx
      .insertInto('panel')
      .values({
        id,
        company_id: company,
        scheme,
        part,
        items: JSON.stringify(items),
        content_revision: content.revision,
        round: 1,
        opened_by: person,
        opened_at: act.at,
        closed_at: null,
      })
      .execute();
    const deed = { action: 'open panel', subject: id, detail: { scheme, part } };
    await append(trx, doerOf(act), deed);
    return ok(id);
  });
}

function itemsFor(
  { topics }: Content,
  { blueprint }: WrittenPart,
  seed: string,
  {
    retired,
    expected,
  }: {
    readonly retired: ReadonlySet<string>;
    readonly expected: Awaited<ReturnType<typeof shareRight>>;
  },
): readonly string[] | undefined {
  const bank = [...topics.values()].flatMap(({ id: topic, questions }) =>
    questions
      .filter(({ id }) => !retired.has(id))
      .map((question) => ({
        id: question.id,
        topic,
        kind: question.kind,
        difficulty: expected(question),
        exposures: 0,
      })),
  );
  const form = drawForm({ bank, blueprint, seed, drawn: 0, cap: 1 });
  return form.ok ? form.value.items.map(({ id }) => id) : undefined;
}

const panelRow = (db: Db, company: string, panel: string) =>
  db
    .selectFrom('panel')
    .selectAll()
    .where('company_id', '=', company)
    .where('id', '=', panel)
    .executeTakeFirst();

/** Of each judge the last that was handed in, by round. */
async function handedIn(db: Db, panel: string, round: number) {
  const rows = await db
    .selectFrom('panel_rating')
    .select(['judge_id as judge', 'ratings'])
    .where('panel_id', '=', panel)
    .where('round', '=', round)
    .orderBy('made_at')
    .orderBy('id')
    .execute();
  return new Map(rows.map(({ judge, ratings }) => [judge, JSON.parse(ratings) as Ratings]));
}

/** `INCOMPLETE`: a question has no number from 0 to 100, or there is one too many. */
export function rate(
  db: Db,
  act: Act,
  panel: string,
  ratings: Ratings,
): Promise<Result<true, PanelFault>> {
  const { company, person } = act.by;
  return inTurn(db, company, async (trx) => {
    const row = await panelRow(trx, company, panel);
    if (!row) return fault('ABSENT');
    if (row.closed_at !== null) return fault('CLOSED');
    const items = JSON.parse(row.items) as readonly string[];
    const isWhole =
      Object.keys(ratings).length === items.length &&
      items.every((item) => {
        const rating = ratings[item];
        return rating !== undefined && rating >= 0 && rating <= 100;
      });
    if (!isWhole) return fault('INCOMPLETE');
    await trx
      .insertInto('panel_rating')
      .values({
        id: freshId(),
        company_id: company,
        panel_id: panel,
        judge_id: person,
        round: row.round,
        ratings: JSON.stringify(ratings),
        made_at: act.at,
      })
      .execute();
    await append(trx, doerOf(act), { action: 'rate for panel', subject: panel });
    return ok(true);
  });
}

/** To another round once this one was talked over, or to its end. `NOBODY` handed in anything yet. */
export function moveOn(
  db: Db,
  act: Act,
  panel: string,
  to: 'next round' | 'end',
): Promise<Result<true, PanelFault>> {
  const { company } = act.by;
  return inTurn(db, company, async (trx) => {
    const row = await panelRow(trx, company, panel);
    if (!row) return fault('ABSENT');
    if (row.closed_at !== null) return fault('CLOSED');
    if ((await handedIn(trx, panel, row.round)).size === 0) return fault('NOBODY');
    const change = to === 'end' ? { closed_at: act.at } : { round: row.round + 1 };
    await trx.updateTable('panel').set(change).where('id', '=', panel).execute();
    const action = to === 'end' ? 'close panel' : 'next round of panel';
    await append(trx, doerOf(act), { action, subject: panel, detail: { round: row.round } });
    return ok(true);
  });
}

/** What a round comes to, once it is over: the cut in questions and its error, or how many judges it takes. */
function cutOf(items: readonly string[], round: ReadonlyMap<string, Ratings>) {
  const rows = [...round.values()].map((own) => items.map((item) => (own[item] ?? 0) / 100));
  const verdict = panelVerdict(rows);
  if (!verdict.enough) return verdict;
  if (!verdict.value.ok) return undefined;
  const { cut, error, judges } = verdict.value.value;
  return { enough: true as const, value: { cut, error, judges } };
}

export const panelsOf = (db: Db, { company, scheme, part }: PartKey) =>
  db
    .selectFrom('panel')
    .select(['id', 'opened_at as openedAt', 'closed_at as closedAt', 'round'])
    .where('company_id', '=', company)
    .where('scheme', '=', scheme)
    .where('part', '=', part)
    .orderBy('opened_at', 'desc')
    .execute();

/** As one judge may see it: their own numbers, and of the rounds before, the mean of all. */
export async function panelFor(db: Db, content: Content, act: Act, panel: string) {
  const { company, person } = act.by;
  const row = await panelRow(db, company, panel);
  const named = row && partNamed(content, row.scheme, row.part);
  if (!row || !named) return undefined;
  const items = JSON.parse(row.items) as readonly string[];
  const now = await handedIn(db, panel, row.round);
  const isClosed = row.closed_at !== null;
  const last = isClosed ? now : await handedIn(db, panel, row.round - 1);
  const meanOf = (item: string): number | undefined =>
    last.size === 0
      ? undefined
      : [...last.values()].reduce((sum, own) => sum + (own[item] ?? 0), 0) / last.size;
  return {
    id: row.id,
    scheme: { id: named.scheme.id, title: named.scheme.title },
    part: { id: named.part.id, title: named.part.title },
    passMark: approximate(named.part.passMark.value),
    round: row.round,
    isClosed,
    judges: now.size,
    hasRated: now.has(person),
    items: items.map((item) => ({ item, own: now.get(person)?.[item], mean: meanOf(item) })),
    /** Of the round before, or of the last one where it is closed. */
    cut: last.size === 0 ? undefined : cutOf(items, last),
  };
}
