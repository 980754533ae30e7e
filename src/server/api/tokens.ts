/**
 * Tokens by which other programs read a company's records: each for what it is good for and no longer than
 * a year. The token itself is shown when it is made and kept nowhere; of when it is used only the day is.
 */
import { z } from 'zod';
import { type Scope, scopes, type TokenFault, type TokenRow } from '#engine/record/token.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { uuidForm } from '#engine/uuid.ts';
import { append } from '../audit/audit-trail.ts';
import { inTurn } from '../companies/in-turn.ts';
import type { Db } from '../database/open-database.ts';
import { outageOf } from '../database/outage.ts';
import { type Act, doerOf } from '../people/member.ts';
import { nameForm } from '../people/names.ts';
import { scopesFrom, scopesText } from './scopes.ts';
import { freshToken, tokenDigest } from './token-secret.ts';

/** For how many days one may be made. */
export const spans = [30, 90, 180, 365] as const;
/** How many may be good at once. */
export const mostAtOnce = 20;
const dayMilliseconds = 24 * 60 * 60 * 1000;

const form = z.object({
  id: z.string().regex(uuidForm),
  label: nameForm,
  scopes: z.array(z.enum(scopes)).min(1),
  days: z.coerce.number().refine((days) => spans.some((span) => span === days)),
});

export type GivenToken = {
  /** Made where it was asked for: the same one twice makes one token. */
  readonly id: string;
  readonly label: string;
  readonly scopes: readonly string[];
  readonly days: string;
};

const faultOf: Readonly<Record<keyof GivenToken, TokenFault>> = {
  id: 'ABSENT',
  label: 'LABEL_WRONG',
  scopes: 'SCOPES_WRONG',
  days: 'DAYS_WRONG',
};

/** The token, which is told nowhere else. */
export async function make(
  db: Db,
  act: Act,
  given: GivenToken,
): Promise<Result<string, TokenFault>> {
  const read = form.safeParse(given);
  if (!read.success) return fault(faultOf[read.error.issues[0]?.path[0] as keyof GivenToken]);
  const { id, label, days } = read.data;
  const { company, person } = act.by;
  return inTurn(db, company, async (trx) => {
    const before = await trx.selectFrom('api_token').select('id').where('id', '=', id).execute();
    if (before.length > 0) return fault('MADE_BEFORE');
    if ((await goodNow(trx, company, act.at)) >= mostAtOnce) return fault('TOO_MANY');
    const token = freshToken();
    const expiresAt = new Date(Date.parse(act.at) + days * dayMilliseconds).toISOString();
    const held = scopesText(read.data.scopes);
    await trx
      .insertInto('api_token')
      .values({
        id,
        company_id: company,
        label,
        scopes: held,
        digest: tokenDigest(token),
        made_by: person,
        made_at: act.at,
        expires_at: expiresAt,
        revoked_at: null,
        last_used_on: null,
      })
      .execute();
    const detail = { scopes: held, expiresAt };
    await append(trx, doerOf(act), { action: 'make token', subject: id, detail });
    return ok(token);
  });
}

async function goodNow(trx: Db, company: string, at: string): Promise<number> {
  const { tokens } = await trx
    .selectFrom('api_token')
    .select(({ fn }) => fn.countAll().as('tokens'))
    .where('company_id', '=', company)
    .where('revoked_at', 'is', null)
    .where('expires_at', '>', at)
    .executeTakeFirstOrThrow();
  return Number(tokens);
}

/** From now on it opens nothing. */
export const revoke = (db: Db, act: Act, id: string): Promise<Result<true, 'ABSENT'>> =>
  inTurn(db, act.by.company, async (trx) => {
    const revoked = await trx
      .updateTable('api_token')
      .set({ revoked_at: act.at })
      .where('company_id', '=', act.by.company)
      .where('id', '=', id)
      .where('revoked_at', 'is', null)
      .returning('id')
      .executeTakeFirst();
    if (!revoked) return fault('ABSENT');
    await append(trx, doerOf(act), { action: 'revoke token', subject: id });
    return ok(true);
  });

/** Every token of a company, those that are good first, then the latest first. */
export async function list(db: Db, company: string, at: string): Promise<readonly TokenRow[]> {
  const rows = await db
    .selectFrom('api_token')
    .innerJoin('person', 'person.id', 'api_token.made_by')
    .select([
      'api_token.id',
      'label',
      'scopes',
      'made_at as madeAt',
      'person.name as madeBy',
      'person.left_at as leftAt',
      'expires_at as expiresAt',
      'revoked_at as revokedAt',
      'last_used_on as lastUsedOn',
    ])
    .where('api_token.company_id', '=', company)
    .orderBy('made_at', 'desc')
    .orderBy('api_token.id', 'desc')
    .execute();
  const all = rows.map(({ leftAt, ...row }): TokenRow => ({
    ...row,
    scopes: scopesFrom(row.scopes),
    state: row.revokedAt !== null ? 'revoked' : row.expiresAt > at ? 'good' : 'expired',
    hasMakerLeft: leftAt !== null,
  }));
  const isGood = ({ state }: TokenRow) => state === 'good';
  return [...all.filter(isGood), ...all.filter((row) => !isGood(row))];
}

/** What a request by a token goes by. */
export type Bearer = {
  readonly token: string;
  readonly company: string;
  readonly scopes: readonly Scope[];
};

/** Whose a token is, and that it was used today; why it opens nothing. */
export async function bearerOf(
  db: Db,
  token: string,
  at: string,
): Promise<Result<Bearer, 'UNKNOWN_TOKEN' | 'TOKEN_EXPIRED' | 'TOKEN_REVOKED'>> {
  const row = await db
    .selectFrom('api_token')
    .select(['id', 'company_id as company', 'scopes'])
    .select(['expires_at as expiresAt', 'revoked_at as revokedAt', 'last_used_on as lastUsedOn'])
    .where('digest', '=', tokenDigest(token))
    .executeTakeFirst();
  if (!row) return fault('UNKNOWN_TOKEN');
  if (row.revokedAt !== null) return fault('TOKEN_REVOKED');
  if (row.expiresAt <= at) return fault('TOKEN_EXPIRED');
  const today = at.slice(0, 10);
  if (row.lastUsedOn !== today) {
    const used = db.updateTable('api_token').set({ last_used_on: today });
    // Whoever only reads is not kept out where nothing can be written just now.
    await used
      .where('id', '=', row.id)
      .execute()
      .catch((thrown: unknown) => {
        if (!outageOf(thrown)) throw thrown;
      });
  }
  return ok({ token: row.id, company: row.company, scopes: scopesFrom(row.scopes) });
}
