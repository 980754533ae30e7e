/** Every address, as everybody: what the table of doors says is what a running server does. */
import { readdirSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Door, doors } from '#server/access/doors.ts';
import { may } from '#server/access/rights.ts';
import { type Role, roles, rolesText } from '#server/access/roles.ts';
import { found } from '#server/companies/companies.ts';
import { openAuth } from '#server/logins/auth.ts';
import { create, signIn } from '#server/logins/logins.ts';
import { freshId } from '#server/fresh-id.ts';
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
  const knock = async ({ route, key }: Knock, cookie: string | undefined): Promise<number> => {
    const path = route.replace('[company]', company).replace(/\[[^\]]+\]/g, freshId());
    const isRead = key === 'GET';
    const query = isRead || key === 'POST' ? '' : `?/${key}`;
    const answer = await fetch(site.address + path + query, {
      method: isRead ? 'GET' : 'POST',
      redirect: 'manual',
      headers: {
        accept: 'application/json',
        origin: site.address,
        ...(cookie ? { cookie } : {}),
        ...(isRead ? {} : { 'content-type': 'application/x-www-form-urlencoded' }),
      },
      ...(isRead ? {} : { body: 'nothing=1' }),
    });
    await answer.arrayBuffer();
    return answer.status;
  };

  // Ending one's own session would shut the others out.
  const harmless = guarded.filter(({ key }) => key !== 'out');

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
    test.each(harmless)('$key $route', async (asked) => {
      const status = await knock(asked, cookies.get(role));
      const isIn = asked.door === 'open' || asked.door === 'signed in' || may([role], asked.door);
      if (isIn) {
        expect([401, 403]).not.toContain(status);
        expect(status).toBeLessThan(500);
      } else {
        expect(status).toBe(403);
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
