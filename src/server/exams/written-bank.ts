/** The questions that a form is drawn from: the content's, without those that a company asks no more. */
import { sql } from 'kysely';
import type { Content } from '#engine/compile/content.ts';
import type { BankItem } from '#engine/exam/bank.ts';
import { drawForm } from '#engine/exam/form.ts';
import type { FormFault } from '#engine/exam/form-request.ts';
import { type Faded, leaningTo } from '#engine/exam/leaning.ts';
import type { WrittenPart } from '#engine/exam/scheme.ts';
import { ok, type Result } from '#engine/result.ts';
import { posed } from '#engine/written/posed.ts';
import type { Question, TopicId } from '#engine/written/question.ts';
import { shelfOf } from '../attempts/shelf.ts';
import type { Db } from '../database/open-database.ts';
import { shareRight } from './measured-share.ts';
import type { Drawn } from './plan.ts';
import { retiredItems } from './retired-items.ts';

const questions = new WeakMap<Content, ReadonlyMap<string, Question>>();

/** Every question of the content by its id; one that cannot be asked on its data sheet is none. */
export function questionsOf(content: Content): ReadonlyMap<string, Question> {
  const known = questions.get(content) ?? askable(content);
  questions.set(content, known);
  return known;
}

const askable = (content: Content): ReadonlyMap<string, Question> =>
  new Map(
    [...content.topics.values()]
      .flatMap((topic) => topic.questions)
      .filter((question) => posed(question, 0, shelfOf(content)))
      .map((question) => [question.id, question]),
  );

export type Series = { readonly company: string; readonly scheme: string; readonly part: string };

/** Draws the questions of one form. To be called where no other form of the company is drawn meanwhile. */
export async function drawWritten(
  trx: Db,
  content: Content,
  series: Series,
  {
    part,
    person,
    seed,
    faded,
  }: {
    readonly part: WrittenPart;
    readonly person: string;
    readonly seed: string;
    /** Of a renewal: what has faded, which it asks most about. */
    readonly faded?: Faded | undefined;
  },
): Promise<Result<Drawn, readonly FormFault[]>> {
  const bank = await bankOf(trx, content, series, part);
  const blueprint = faded ? leaningTo(part.blueprint, faded, sizes(bank)) : part.blueprint;
  const form = drawForm({
    bank,
    blueprint,
    seed,
    drawn: await formsDrawn(trx, series),
    seen: await seenBy(trx, person),
  });
  if (!form.ok) return form;
  const { items, difficulty, target, isMatched } = form.value;
  return ok({
    items: items.map(({ id }) => id),
    match: { difficulty, target, isMatched },
    ...(faded ? { asks: Object.fromEntries(blueprint) } : {}),
  });
}

const sizes = (bank: readonly BankItem[]): ReadonlyMap<string, number> =>
  new Map(
    [...Map.groupBy(bank, ({ topic }) => topic)].map(([topic, items]) => [topic, items.length]),
  );

async function bankOf(
  trx: Db,
  content: Content,
  series: Series,
  { blueprint }: WrittenPart,
): Promise<readonly BankItem[]> {
  const { company, scheme, part: id } = series;
  const uses = await trx
    .selectFrom('item_use')
    .select(['item', 'forms'])
    .where('company_id', '=', company)
    .where('scheme', '=', scheme)
    .where('part', '=', id)
    .execute();
  const gone = await retiredItems(trx, company);
  const formsWith = new Map(uses.map(({ item, forms }) => [item, forms]));
  const known = questionsOf(content);
  const expected = await shareRight(trx, series);
  return [...blueprint.keys()]
    .flatMap((topic) => content.topics.get(topic as TopicId)?.questions ?? [])
    .filter((question) => known.has(question.id) && !gone.has(question.id))
    .map((question) => ({
      id: question.id,
      topic: question.topic,
      kind: question.kind,
      difficulty: expected(question),
      exposures: formsWith.get(question.id) ?? 0,
    }));
}

async function formsDrawn(trx: Db, { company, scheme, part }: Series): Promise<number> {
  const { count } = await trx
    .selectFrom('sitting')
    .select(({ fn }) => fn.countAll().as('count'))
    .where('company_id', '=', company)
    .where('scheme', '=', scheme)
    .where('part', '=', part)
    .executeTakeFirstOrThrow();
  return Number(count);
}

/** What somebody had on earlier forms, of whatever scheme. */
async function seenBy(trx: Db, person: string): Promise<ReadonlySet<string>> {
  const rows = await trx
    .selectFrom('sitting')
    .select('plan')
    .where('person_id', '=', person)
    .where('kind', '=', 'written')
    .execute();
  return new Set(rows.flatMap(({ plan }) => (JSON.parse(plan) as Drawn).items));
}

/** Counts a form that was drawn. */
export async function countUse(
  trx: Db,
  { company, scheme, part }: Series,
  items: readonly string[],
): Promise<void> {
  await trx
    .insertInto('item_use')
    .values(items.map((item) => ({ company_id: company, scheme, part, item, forms: 1 })))
    .onConflict((conflict) =>
      conflict
        .columns(['company_id', 'scheme', 'part', 'item'])
        .doUpdateSet({ forms: sql<number>`item_use.forms + 1` }),
    )
    .execute();
}
