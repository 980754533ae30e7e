/** Every address, as everybody: what the table of doors says is what a running server does. */
import { readdirSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Door, doors, scopeOf } from '#server/access/doors.ts';
import { may, type Right } from '#server/access/rights.ts';
import { type Role, roles, rolesText } from '#server/access/roles.ts';
import { found } from '#server/companies/companies.ts';
import { openAuth } from '#server/logins/auth.ts';
import { create, signIn } from '#server/logins/logins.ts';
import { type Scope, scopes } from '#engine/record/token.ts';
import { freshToken } from '#server/api/token-secret.ts';
import * as tokens from '#server/api/tokens.ts';
import { freshId } from '#server/fresh-id.ts';
import { actOf } from '../people/company.ts';
import { type Site, serve } from '../../browser/site.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const routes = join(import.meta.dirname, '../../../src/routes');

/** The id of every route that has a page or answers by itself, as the framework names it. */
const routeIds = readdirSync(routes, { recursive: true, encoding: 'utf8' })
  .filter((file) => /(^|[/\\])\+(page\.svelte|server\.ts)$/.test(file))
  .map((file) => `/${relative(routes, join(routes, dirname(file))).replaceAll('\\', '/')}`)
  .toSorted();

type Knock = { readonly route: string; readonly key: string; readonly door: Door };

const knocks: readonly Knock[] = Object.entries(doors).flatMap(([route, keys]) =>
  Object.entries(keys).map(([key, door]) => ({ route, key, door })),
);
const guarded = knocks.filter(({ door }) => door !== 'open');
const at = new Date();

describe('the table', () => {
  test('names every address of the app and no other', () => {
    expect(Object.keys(doors).toSorted()).toEqual([...new Set(routeIds)]);
  });

  test('has more than one door that is not open', () => {
    expect(guarded.length).toBeGreaterThan(10);
  });
});

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let site: Site;
  const cookies = new Map<Role | 'stranger', string>();
  let company: string;
  let foreign: string;

  beforeAll(async () => {
    records = await freshRecords(kind);
    const { db } = records;
    const auth = await openAuth(records);
    const person = async (name: string, into: string, held: readonly Role[]) => {
      const login = await create(auth, { name, password: `${name}-password`, username: name });
      if (!login.ok) throw new Error(login.error);
      await db
        .insertInto('person')
        .values({
          id: freshId(),
          company_id: into,
          login_id: login.value,
          name,
          roles: rolesText(held),
          search: name,
          created_at: at.toISOString(),
        })
        .execute();
      const from = { address: '192.0.2.1', agent: 'test' };
      const signedIn = await signIn({ auth, db }, { name, password: `${name}-password` }, from, at);
      if (!signedIn.ok) throw new Error(signedIn.error.code);
      return `underlap.session_token=${encodeURIComponent(signedIn.value.cookie)}`;
    };
    const founded = { office: 'Office', at: at.toISOString() };
    ({ company } = await found(db, { ...founded, name: 'Ours', login: freshId() }));
    ({ company: foreign } = await found(db, { ...founded, name: 'Theirs', login: freshId() }));
    for (const role of roles) cookies.set(role, await person(role, company, [role]));
    cookies.set('stranger', await person('stranger', foreign, [...roles]));
    const kept =
      'url' in records.place
        ? { DATABASE_URL: records.place.url }
        : { DATA_DIR: records.place.folder };
    site = await serve(undefined, 0, { ...kept, LOG_LEVEL: 'off' });
  });
  afterAll(async () => {
    await site.stop();
    await records.drop();
  });

  /** Ids that nobody has stand for all but the company: whoever is let in finds nothing, or does nothing. */
  const answerTo = async (
    { route, key }: Knock,
    { cookie, token }: { readonly cookie?: string | undefined; readonly token?: string },
  ): Promise<Response> => {
    const path = route.replace('[company]', company).replace(/\[[^\]]+\]/g, freshId());
    const isRead = key === 'GET';
    const query = isRead || key === 'POST' ? '' : `?/${key}`;
    return fetch(site.address + path + query, {
      method: isRead ? 'GET' : 'POST',
      redirect: 'manual',
      headers: {
        accept: 'application/json',
        origin: site.address,
        ...(cookie ? { cookie } : {}),
        ...(token ? { authorization: `Bearer ${token}` } : {}),
        ...(isRead ? {} : { 'content-type': 'application/x-www-form-urlencoded' }),
      },
      ...(isRead ? {} : { body: 'nothing=1' }),
    });
  };
  const knock = async (asked: Knock, cookie: string | undefined): Promise<number> => {
    const answer = await answerTo(asked, { cookie });
    await answer.arrayBuffer();
    return answer.status;
  };

  // Ending one's own session would shut the others out.
  const harmless = guarded.filter(({ key }) => key !== 'out');
  const forPeople = harmless.filter(({ door }) => scopeOf(door) === undefined);
  const forTokens = guarded.filter(({ door }) => scopeOf(door) !== undefined);

  test.each(harmless)('$key $route: nobody who is signed out', async (asked) => {
    expect(await knock(asked, undefined)).toBe(401);
    expect(await knock(asked, 'underlap.session_token=forged.c2lnbmF0dXJl')).toBe(401);
  });

  test.each(harmless.filter(({ route }) => route.includes('[company]')))(
    '$key $route: nobody of another company',
    async (asked) => {
      expect(await knock(asked, cookies.get('stranger'))).toBe(404);
    },
  );

  describe.each(roles)('as %s', (role) => {
    test.each(forPeople)('$key $route', async (asked) => {
      const status = await knock(asked, cookies.get(role));
      const isIn =
        asked.door === 'open' || asked.door === 'signed in' || may([role], asked.door as Right);
      if (isIn) {
        expect([401, 403]).not.toContain(status);
        expect(status).toBeLessThan(500);
      } else {
        expect(status).toBe(403);
      }
    });
  });

  describe('by token', () => {
    const held = new Map<string, string>();
    const make = async (name: string, into: string, good: readonly Scope[], made = at) => {
      const { id: office } = await records.db
        .selectFrom('person')
        .select('id')
        .where('company_id', '=', into)
        .where('name', '=', 'Office')
        .executeTakeFirstOrThrow();
      const act = { ...actOf(into, office), at: made.toISOString() };
      const id = freshId();
      const done = await tokens.make(records.db, act, {
        id,
        label: name,
        scopes: good,
        days: '30',
      });
      if (!done.ok) throw new Error(done.error);
      held.set(name, done.value);
      return { act, id };
    };
    beforeAll(async () => {
      await make('all', company, scopes);
      await make('expired', company, scopes, new Date(at.getTime() - 31 * 86_400_000));
      await make('foreign', foreign, scopes);
      const { act, id } = await make('revoked', company, scopes);
      await tokens.revoke(records.db, act, id);
      for (const scope of scopes) {
        const others = scopes.filter((other) => other !== scope);
        await make(`all but ${scope}`, company, others);
      }
    });

    const problem = async (asked: Knock, token: string | undefined, cookie?: string) => {
      const answer = await answerTo(asked, { cookie, ...(token ? { token } : {}) });
      const told: unknown = await answer.json();
      return { answer, told };
    };

    test.each(forTokens)('$key $route', async (asked) => {
      const refusals = [
        [undefined, 401, 'NO_TOKEN'],
        [freshToken(), 401, 'UNKNOWN_TOKEN'],
        ['not one of ours', 401, 'UNKNOWN_TOKEN'],
        [held.get('expired'), 401, 'TOKEN_EXPIRED'],
        [held.get('revoked'), 401, 'TOKEN_REVOKED'],
        [held.get(`all but ${scopeOf(asked.door)}`), 403, 'WRONG_SCOPE'],
      ] as const;
      for (const [token, status, code] of refusals) {
        // Being signed in as the office opens nothing here.
        const { answer, told } = await problem(asked, token, cookies.get('office'));
        expect({ code, status: answer.status }).toEqual({ code, status });
        expect(told).toMatchObject({ type: 'about:blank', status, code });
        expect(answer.headers.get('content-type')).toBe('application/problem+json');
        expect(answer.headers.get('www-authenticate')).toMatch(/^Bearer/);
      }
      for (const name of ['all', 'foreign']) {
        const { answer } = await problem(asked, held.get(name));
        expect([401, 403]).not.toContain(answer.status);
        expect(answer.status).toBeLessThan(500);
        expect(answer.headers.get('cache-control')).toMatch(/no-store/);
      }
    });

    test('a token opens no page', async () => {
      for (const { route } of forPeople.filter(({ key }) => key === 'GET').slice(0, 6)) {
        const asked = { route, key: 'GET', door: 'be here' } as const;
        expect((await answerTo(asked, { token: held.get('all')! })).status).toBe(401);
      }
    });

    test('an address or method that is not there is told as a problem', async () => {
      const token = held.get('all')!;
      for (const [method, path] of [
        ['GET', '/api'],
        ['GET', '/api/nothing'],
        ['DELETE', '/api/people'],
      ] as const) {
        const headers = { authorization: `Bearer ${token}`, accept: 'text/html' };
        const answer = await fetch(site.address + path, { method, headers });
        expect(answer.status).toBe(404);
        expect(await answer.json()).toMatchObject({ code: 'ABSENT' });
      }
    });
  });

  test('who has left is shut out at once', async () => {
    const { db } = records;
    await db
      .updateTable('person')
      .set({ left_at: at.toISOString() })
      .where('company_id', '=', company)
      .where('name', '=', 'apprentice')
      .execute();
    const home: Knock = { route: '/company/[company]', key: 'GET', door: 'be here' };
    expect(await knock(home, cookies.get('apprentice'))).toBe(404);
    expect(await knock(home, cookies.get('trainer'))).toBe(200);
  });
});
