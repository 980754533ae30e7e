/** What a running server answers to whatever may be sent where a file is read in. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { found } from '#server/companies/companies.ts';
import { openAuth } from '#server/logins/auth.ts';
import { create, signIn } from '#server/logins/logins.ts';
import { type Site, serve } from '../../browser/site.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const megabyte = 1024 * 1024;
const at = new Date();

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let site: Site;
  let cookie: string;
  let home: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
    const { db } = records;
    const auth = await openAuth(records);
    const known = { name: 'olga', password: 'three plain words' };
    const login = await create(auth, { ...known, username: known.name });
    if (!login.ok) throw new Error(login.error);
    const { company } = await found(db, {
      name: 'Ours',
      office: 'Olga Office',
      login: login.value,
      at: at.toISOString(),
    });
    const from = { address: '192.0.2.1', agent: 'test' };
    const signedIn = await signIn({ auth, db }, known, from, at);
    if (!signedIn.ok) throw new Error(signedIn.error.code);
    cookie = `underlap.session_token=${encodeURIComponent(signedIn.value.cookie)}`;
    const kept =
      'url' in records.place
        ? { DATABASE_URL: records.place.url }
        : { DATA_DIR: records.place.folder };
    site = await serve(undefined, 0, { ...kept, LOG_LEVEL: 'off' });
    home = `${site.address}/company/${company}`;
  });
  afterAll(async () => {
    await site.stop();
    await records.drop();
  });

  const send = async (address: string, fields: Readonly<Record<string, string | Blob>>) => {
    const body = new FormData();
    for (const [name, value] of Object.entries(fields)) body.set(name, value);
    const headers = { accept: 'application/json', origin: site.address, cookie };
    const answer = await fetch(home + address, { method: 'POST', body, headers });
    return { status: answer.status, told: await answer.text() };
  };
  const saved = async (address: string) => {
    const answer = await fetch(home + address, { headers: { cookie } });
    return { headers: answer.headers, text: await answer.text() };
  };
  const bytes = (count: number) => new Blob(['x'.repeat(count)], { type: 'text/csv' });
  const pages = ['/people/import', '/board/declared'];

  test.each(pages)(
    '%s: what is far too large is refused unread, and what is too large is told',
    async (page) => {
      expect(await send(`${page}?/preview`, { file: bytes(10 * megabyte) })).toMatchObject({
        status: 413,
      });
      expect((await send(`${page}?/preview`, { file: bytes(1.2 * megabyte) })).told).toContain(
        'TOO_LARGE',
      );
      expect(
        (await send(`${page}?/preview`, { pasted: 'x'.repeat(1.2 * megabyte) })).told,
      ).toContain('TOO_LARGE');
    },
  );

  test.each(pages)('%s: a file or pasted rows, one of the two', async (page) => {
    expect((await send(`${page}?/preview`, { pasted: ' ' })).told).toContain('MISSING');
    const both = { file: bytes(3), pasted: 'name\nAna' };
    expect((await send(`${page}?/preview`, both)).told).toContain('TWO_SOURCES');
  });

  test('pasted certificates are looked at, written and saved; what was saved reads in again', async () => {
    const page = '/board/declared';
    const pasted =
      'person\tcertificate\tissuer\tissued on\nOlga Office\tHeight\tSchool\t2025-03-01';
    const looked = await send(`${page}?/preview`, { pasted });
    const [digest = ''] = /[0-9a-f]{64}/.exec(looked.told) ?? [];
    expect(digest).not.toBe('');
    const write = () => send(`${page}?/write`, { text: pasted, digest });
    expect((await write()).told).toMatch(/"type":"success"/);
    expect((await write()).told).toMatch(/"type":"success"/);
    const { headers, text } = await saved(`${page}/export.csv`);
    expect(headers.get('content-type')).toBe('text/csv; charset=utf-8');
    expect(headers.get('content-disposition')).toMatch(
      /^attachment; filename="declared-[\d-]+\.csv"$/,
    );
    expect(text.trim().split('\r\n')).toHaveLength(2);
    expect((await send(`${page}?/preview`, { file: new Blob([text]) })).told).toContain(
      'unchanged',
    );
    expect((await saved(`${page}/template.csv`)).text).toMatch(/^\uFEFF?person,person number,/);
  });
});
