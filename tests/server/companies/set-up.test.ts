import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { setUp } from '#server/companies/set-up.ts';
import { setUpCode } from '#server/companies/set-up-code.ts';
import { type Auth, openAuth } from '#server/logins/auth.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const now = new Date('2030-05-01T07:30:00.000Z');
const given = {
  company: 'North Wall',
  name: 'Olga Office',
  email: 'olga@example.invalid.test',
  password: 'a long password',
};

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let auth: Auth;
  beforeAll(async () => {
    records = await freshRecords(kind);
    auth = await openAuth(records);
  });
  afterAll(() => records.drop());

  const from = (address: string) => ({ address, agent: 'test' });
  const tried = (code: string, address = '192.0.2.1') =>
    setUp({ database: records, auth }, { ...given, code }, from(address), now);
  const companies = () => records.db.selectFrom('company').select('name').execute();

  test('with a wrong code no company and no login is made', async () => {
    const right = await setUpCode(records.db);
    const other = right.startsWith('A') ? `B${right.slice(1)}` : `A${right.slice(1)}`;
    for (const code of ['', 'AAAAA-AAAAA', other, right.slice(0, -1), `${right}A`]) {
      expect(await tried(code), code).toEqual({ ok: false, error: { field: 'code' } });
    }
    expect(await companies()).toEqual([]);
    expect(await records.db.selectFrom('login').select('id').execute()).toEqual([]);
  });

  test('who guesses is made to wait, with the right code too', async () => {
    const address = '192.0.2.2';
    for (let tries = 0; tries < 20; tries += 1) await tried('AAAAA-AAAAA', address);
    const late = await tried(await setUpCode(records.db), address);
    expect(late).toMatchObject({ ok: false, error: { seconds: expect.any(Number) as number } });
    expect(await companies()).toEqual([]);
  });

  test('with the right code, however it is typed, the first company is made, and no second', async () => {
    const code = (await setUpCode(records.db)).toLowerCase().replace('-', ' ');
    expect(await tried(code)).toMatchObject({ ok: true });
    expect(await companies()).toEqual([{ name: 'North Wall' }]);
    expect(await tried(code)).toEqual({ ok: false, error: 'DONE' });
  });
});
