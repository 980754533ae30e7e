/** Forms that choose a crew, as a browser without scripts is shown them by a running server. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { found } from '#server/companies/companies.ts';
import { freshId } from '#server/fresh-id.ts';
import { openAuth } from '#server/logins/auth.ts';
import { create, signIn } from '#server/logins/logins.ts';
import { choiceLength, foundLength } from '#server/people/crew-list.ts';
import { type Site, serve } from '../../browser/site.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { actOf, added } from './company.ts';

const at = new Date();
const crewCount = 6700;

describe.each(kinds)('of 6,700 crews, on %s,', (kind) => {
  let records: Records;
  let site: Site;
  let cookie: string;
  let home: string;
  let person: string;
  const crews = Array.from({ length: crewCount }, (_, place) => ({
    id: freshId(),
    name: `Crew ${10_000 + place}`,
  }));
  const [mine, far] = [crews[6000]!, crews[6699]!];

  beforeAll(async () => {
    records = await freshRecords(kind);
    const { db } = records;
    const auth = await openAuth(records);
    const password = 'office-password';
    const login = await create(auth, { name: 'Office', password, username: 'office' });
    if (!login.ok) throw new Error(login.error);
    const made = await found(db, {
      name: 'Ours',
      office: 'Office',
      login: login.value,
      at: at.toISOString(),
    });
    const rows = crews.map(({ id, name }) => ({
      id,
      company_id: made.company,
      name,
      folded_name: name.toLowerCase(),
      created_at: at.toISOString(),
    }));
    for (let from = 0; from < crewCount; from += 500) {
      await db
        .insertInto('crew')
        .values(rows.slice(from, from + 500))
        .execute();
    }
    person = await added(db, actOf(made.company, made.person), { name: 'Ann', crew: mine.id });
    const from = { address: '192.0.2.1', agent: 'test' };
    const signedIn = await signIn({ auth, db }, { name: 'office', password }, from, at);
    if (!signedIn.ok) throw new Error(signedIn.error.code);
    cookie = `underlap.session_token=${encodeURIComponent(signedIn.value.cookie)}`;
    const kept =
      'url' in records.place
        ? { DATABASE_URL: records.place.url }
        : { DATA_DIR: records.place.folder };
    site = await serve(undefined, 0, { ...kept, LOG_LEVEL: 'off' });
    home = `${site.address}/company/${made.company}`;
  });
  afterAll(async () => {
    await site.stop();
    await records.drop();
  });

  const asked = { accept: 'text/html', cookie: '' };
  const pageAt = async (path: string): Promise<string> =>
    (await fetch(home + path, { headers: { ...asked, cookie } })).text();
  const sent = async (path: string, form: Readonly<Record<string, string>>): Promise<string> => {
    const headers = { ...asked, cookie, origin: site.address };
    const body = new URLSearchParams(form);
    return (await fetch(home + path, { method: 'POST', headers, body })).text();
  };
  const named = (page: string): readonly string[] => [
    ...new Set(page.match(/(?<=[> ])Crew 1\d{4}(?=[<])/g)),
  ];
  const picked = (page: string): readonly string[] =>
    [...page.matchAll(/<option value="([^"]+)" selected/g)].map(([, id]) => id!);

  test.each([
    ['/people', choiceLength],
    ['/board', choiceLength],
    ['/cards', choiceLength],
    ['/crews', 50],
    ['/jobs/new', 0],
  ])('%s lists no more than a form can hold', async (path, most) => {
    const page = await pageAt(path);
    expect(page).toContain(path === '/crews' ? 'name="search"' : 'name="crew-search"');
    // Whoever is on the page brings their own crew with them.
    expect(named(page).filter((name) => name !== mine.name)).toHaveLength(most);
    expect(page.length).toBeLessThan(150_000);
  });

  test('somebody moves to one that is looked for, and is in their own until then', async () => {
    const before = await pageAt(`/people/${person}`);
    expect(picked(before)).toContain(mine.id);
    expect(named(before)).toHaveLength(choiceLength + 1);
    const after = await pageAt(`/people/${person}?crew=${mine.id}&crew-search=16699`);
    expect(named(after).toSorted()).toEqual([mine.name, far.name]);
    await sent(`/people/${person}?/move`, { crew: far.id });
    expect(picked(await pageAt(`/people/${person}`))).toContain(far.id);
    await sent(`/people/${person}?/move`, { crew: mine.id });
  });

  test('somebody new keeps what was entered while a crew is looked for', async () => {
    const page = await sent('/people?/find', { name: 'Bea Long', 'crew-search': '1669' });
    expect(page).toContain('value="Bea Long"');
    expect(named(page).filter((name) => name.startsWith('Crew 1669'))).toHaveLength(10);
  });

  test('a job keeps what was entered while a crew is looked for, and the ways told', async () => {
    const typed = { title: 'East wall', [`miles-${mine.id}`]: '40', 'crew-search': '16699' };
    const page = await sent('/jobs/new?/find', typed);
    expect(page).toContain('value="East wall"');
    expect(named(page).toSorted()).toEqual([mine.name, far.name]);
    expect(page).toMatch(new RegExp(`name="miles-${mine.id}"[^>]*value="40"`));
  });

  test('cards are made for one that is looked for', async () => {
    expect(named(await pageAt('/cards?crew-search=16699'))).toEqual([far.name]);
    expect(named(await pageAt('/cards?crew-search=Crew'))).toHaveLength(foundLength);
  });

  test('one that closes has a page of its own, and its people go to one looked for', async () => {
    const page = await pageAt(`/crews?crew=${mine.id}&to=&crew-search=16699`);
    expect(named(page).toSorted()).toEqual([mine.name, far.name]);
    const [, action = ''] = /action="(\?\/close[^"]*)"/.exec(page) ?? [];
    expect(action).toContain(mine.id);
    await sent(`/crews${action.replaceAll('&amp;', '&')}`, { crew: mine.id, to: far.id });
    expect(picked(await pageAt(`/people/${person}`))).toContain(far.id);
    expect(await pageAt(`/crews?crew=${mine.id}`)).toContain('?/reopen');
  });

  test('a person without scripts narrows people and the board to one looked for', async () => {
    for (const path of ['/people', '/board']) {
      const page = await pageAt(`${path}?crew=${far.id}&crew-search=16698`);
      expect(picked(page)).toContain(far.id);
      expect(page).toContain('Crew 16698');
    }
  });
});
