import type { CheckBundle } from '#engine/compile/check-bundle.ts';
import { checkedSequence } from '#engine/compile/check-bundle.ts';
import { formatExact } from '#engine/measure/format-exact.ts';
import { leastOf } from '#engine/method/rule.ts';
import type { CheckSheet } from '#engine/exam/check-sheet.ts';
import { isMeasured, witnessPoints, type WitnessPoint } from '#engine/exam/witness.ts';
import { scale } from '#engine/measure/arithmetic.ts';
import { rational } from '#engine/measure/rational.ts';
import type { Role } from '#server/access/roles.ts';
import { basisOf } from '#server/checks/basis.ts';
import { begin } from '#server/checks/begin.ts';
import { check } from '#server/checks/checks.ts';
import { sign, type Signing } from '#server/checks/sign.ts';
import type { Database, Db } from '#server/database/open-database.ts';
import { openApplication } from '#server/exams/applications.ts';
import { freshId } from '#server/fresh-id.ts';
import { type Auth, openAuth } from '#server/logins/auth.ts';
import { create } from '#server/logins/logins.ts';
import type { Act } from '#server/people/member.ts';
import { content } from '../../content/walls.ts';
import { freshCompany, freshMember } from '../attempts/company.ts';

export { content };

export const installer = 'base-of-wall-installer';
export const corners = 'corners-and-seams';
export const password = 'a long password';
export const at = '2030-05-01T07:30:00.000Z';

export const days = (count: number): string =>
  new Date(Date.parse(at) + count * 86_400_000).toISOString();
export const onDay = ({ by }: Act, count: number): Act => ({ by, at: days(count) });

/** Somebody who can put their name to something. */
export type Signer = { readonly act: Act; readonly login: string };

export type Site = {
  readonly db: Db;
  readonly auth: Auth;
  readonly company: string;
  readonly office: Act;
  readonly candidate: Act;
  readonly person: (roles: readonly Role[], name?: string) => Promise<Act>;
  readonly signer: (name?: string) => Promise<Signer>;
};

type Logins = { readonly auth: Auth; readonly known: Map<string, string> };
const opened = new WeakMap<Database, Promise<Logins>>();

/** Making a password takes its time: each name has one login for all companies of these records. */
const loginsOf = (records: Database): Promise<Logins> => {
  const before =
    opened.get(records) ?? openAuth(records).then((auth) => ({ auth, known: new Map() }));
  opened.set(records, before);
  return before;
};

export async function site(records: Database): Promise<Site> {
  const { db } = records;
  const { auth, known } = await loginsOf(records);
  const { company } = await freshCompany(db);
  const person = async (roles: readonly Role[], name = 'Somebody'): Promise<Act> => ({
    by: await freshMember(db, company, { roles, name }),
    at,
  });
  const signer = async (name = 'Ed Examiner'): Promise<Signer> => {
    const act = await person(['examiner'], name);
    const email = `${freshId()}@example.invalid.test`;
    const made = known.has(name) ? undefined : await create(auth, { name, password, email });
    if (made?.ok) known.set(name, made.value);
    const login = known.get(name)!;
    const { person: id } = act.by;
    await db.updateTable('person').set({ login_id: login }).where('id', '=', id).execute();
    return { act, login };
  };
  return {
    db,
    auth,
    company,
    office: await person(['office'], 'Olga Office'),
    candidate: await person(['apprentice'], 'Ana Apprentice'),
    person,
    signer,
  };
}

export async function applied(
  { db, office, candidate }: Site,
  scheme = installer,
): Promise<string> {
  const made = await openApplication(db, office, content, { person: candidate.by.person, scheme });
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  return made.value;
}

export const realWall = 'real-wall';
export const realCorner = 'real-corner';

export async function begun(
  { db }: Site,
  { act }: Signer,
  application: string,
  part = realWall,
): Promise<string> {
  const made = await begin(db, act, content, { id: freshId(), application, part });
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  return made.value;
}

export async function bundleOf(
  { db, company }: Pick<Site, 'db' | 'company'>,
  id: string,
): Promise<CheckBundle> {
  const found = await check(db, company, id);
  return basisOf(db, found!);
}

export const pointsOf = (bundle: CheckBundle): readonly WitnessPoint[] =>
  witnessPoints(checkedSequence(bundle));

/** What stands there of a point that was done right, or not. */
export function saysOf(point: WitnessPoint, isRight: boolean): string {
  if (!isMeasured(point)) return isRight ? 'right' : 'wrong';
  const least = leastOf(point.rule);
  return formatExact(isRight ? least : scale(least as never, rational(1, 2)));
}

/** Everything seen and right, but for what `wrong` or `unseen` names. */
export async function filled(
  at: Site,
  id: string,
  { wrong = [], unseen = [], when = days(0) }: Filling = {},
): Promise<CheckSheet> {
  const points = pointsOf(await bundleOf(at, id));
  return Object.fromEntries(
    points
      .filter((point) => !unseen.includes(point.id))
      .map((point) => [point.id, { at: when, says: saysOf(point, !wrong.includes(point.id)) }]),
  );
}

type Filling = {
  readonly wrong?: readonly string[];
  readonly unseen?: readonly string[];
  readonly when?: string;
};

export const signed = (
  { db, auth }: Site,
  { act, login }: Signer,
  signing: Pick<Signing, 'id' | 'sheet'> & Partial<Signing>,
) => sign({ db, auth, login }, act, content, { password, brokenOff: undefined, ...signing });
