import { randomBytes } from 'node:crypto';
import type { Content } from '#engine/compile/content.ts';
import type { FormFault } from '#engine/exam/form-request.ts';
import type { Part, Scheme } from '#engine/exam/scheme.ts';
import type { Faded } from '#engine/exam/leaning.ts';
import { allowedFor, usualGrace } from '#engine/exam/sitting.ts';
import type { PartState } from '#engine/exam/standing.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { append } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { freshId } from '../fresh-id.ts';
import { type Act, doerOf } from '../people/member.ts';
import { type Application, application, dayOf, partsFor, standingFor } from './applications.ts';
import type { Drawn, KeptPlan } from './plan.ts';
import { drawMockUp } from './mock-up-part.ts';
import { fadedIn } from './faded.ts';
import { retiredItems } from './retired-items.ts';
import { drawTakeoff } from './takeoff-part.ts';
import { countUse, drawWritten } from './written-bank.ts';

/** A part that is sat at a screen. */
type SatPart = Extract<Part, { readonly kind: 'written' | 'takeoff' | 'mock-up' }>;

export const isSat = (part: Part): part is SatPart => part.kind !== 'hands-on';

/**
 * `OWN`: nobody sets up a sitting of their own. `UNDER_WAY`: one of this part was not released yet.
 * `NOT_NOW`: where the part stands, none can be taken today.
 */
export type SetUpFault =
  | { readonly code: 'ABSENT' | 'CLOSED' | 'OWN' | 'UNKNOWN_PART' | 'UNDER_WAY' }
  | { readonly code: 'NOT_NOW'; readonly state: PartState }
  | { readonly code: 'NO_FORM'; readonly faults: readonly FormFault[] };

type Asked = { readonly application: string; readonly part: string };

/** Draws what is asked, and keeps it for good. Tells the sitting's id. */
export async function setUpSitting(
  db: Db,
  act: Act,
  content: Content,
  asked: Asked,
): Promise<Result<string, SetUpFault>> {
  // Before anybody has to wait: it takes up to a second.
  const faded = await fadedIn(db, content, act, asked.application);
  // In turn, so that two at once never draw from the same counts, nor for the same part.
  return inTurn(db, act.by.company, async (trx) => {
    const made = await application(trx, act.by.company, asked.application);
    if (!made) return fault({ code: 'ABSENT' });
    const scheme = content.schemes.get(made.scheme);
    const part = scheme && partsFor(scheme, made).find(({ id }) => id === asked.part);
    if (!part || !isSat(part)) return fault({ code: 'UNKNOWN_PART' });
    const refused = await refusalOf(trx, act, scheme, made, part);
    if (refused) return fault(refused);
    const seed = randomBytes(16).toString('hex');
    const drawn = await draw(trx, content, { act, scheme, made, part, seed, faded });
    if (!drawn.ok) return fault({ code: 'NO_FORM', faults: drawn.error });
    const plan = { ...drawn.value, seed, allowed: allowedFor(part), grace: usualGrace };
    return ok(await write(trx, act, content, { made, part, plan }));
  });
}

async function refusalOf(
  trx: Db,
  act: Act,
  scheme: Scheme,
  made: Application,
  { id: part }: Part,
): Promise<SetUpFault | undefined> {
  if (made.closedAt !== null) return { code: 'CLOSED' };
  if (made.person === act.by.person) return { code: 'OWN' };
  const underWay = await trx
    .selectFrom('sitting')
    .select('id')
    .where('person_id', '=', made.person)
    .where('scheme', '=', scheme.id)
    .where('part', '=', part)
    .where('phase', 'in', ['waiting', 'open', 'handed-in'])
    .executeTakeFirst();
  if (underWay) return { code: 'UNDER_WAY' };
  const { parts } = await standingFor(trx, scheme, made, dayOf(act.at));
  const state = parts.find((one) => one.part === part)?.state;
  return state && state.kind !== 'may-take' ? { code: 'NOT_NOW', state } : undefined;
}

type Drawing = {
  readonly act: Act;
  readonly scheme: Scheme;
  readonly made: Application;
  readonly part: SatPart;
  readonly seed: string;
  readonly faded: Faded | undefined;
};

async function draw(
  trx: Db,
  content: Content,
  { act, scheme, made, part, seed, faded }: Drawing,
): Promise<Result<Drawn, readonly FormFault[]>> {
  const { company } = act.by;
  if (part.kind !== 'written') {
    const retired = await retiredItems(trx, company);
    return part.kind === 'takeoff'
      ? drawTakeoff(content, { part, retired, seed })
      : drawMockUp(content, { scheme, part, retired, seed });
  }
  const series = { company, scheme: scheme.id, part: part.id };
  const drawn = await drawWritten(trx, content, series, { part, person: made.person, seed, faded });
  if (drawn.ok) await countUse(trx, series, drawn.value.items);
  return drawn;
}

type Writing = {
  readonly made: Application;
  readonly part: SatPart;
  readonly plan: KeptPlan;
};

async function write(
  trx: Db,
  act: Act,
  content: Content,
  { made, part, plan }: Writing,
): Promise<string> {
  const id = freshId();
  await trx
    .insertInto('sitting')
    .values({
      id,
      company_id: act.by.company,
      application_id: made.id,
      person_id: made.person,
      scheme: made.scheme,
      part: part.id,
      kind: part.kind,
      plan: JSON.stringify(plan),
      content_revision: content.revision,
      phase: 'waiting',
      made_by: act.by.person,
      made_at: act.at,
    })
    .execute();
  const detail = { application: made.id, part: part.id, person: made.person };
  await append(trx, doerOf(act), { action: 'set up sitting', subject: id, detail });
  return id;
}
