import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Auth, openAuth } from '#server/logins/auth.ts';
import { secret } from '#server/database/secret.ts';
import {
  changePassword,
  create,
  end,
  endOthers,
  hasEmail,
  renewed,
  sessions,
  signIn,
} from '#server/logins/logins.ts';
import { sessionFrom, tokenFrom } from '#server/logins/session.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const password = 'seven blue ladders';
const now = new Date();
const later = (minutes: number) => new Date(now.getTime() + minutes * 60_000);
const device = (address = '192.0.2.1') => ({ address, agent: 'A browser' });

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let auth: Auth;
  let key: string;
  let login: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
    auth = await openAuth(records);
    key = await secret(records.db, 'sessions');
    const made = await create(auth, { name: 'Ana', password, username: 'Ana.1' });
    if (!made.ok) throw new Error(made.error);
    login = made.value;
    await create(auth, { name: 'Bo', password, email: 'Bo@Company.example' });
  });
  afterAll(() => records.drop());

  const from = (name: string, word: string, when = now, address?: string) =>
    signIn({ auth, db: records.db }, { name, password: word }, device(address), when);
  const cookieOf = async (name: string) => {
    const signedIn = await from(name, password);
    if (!signedIn.ok) throw new Error(signedIn.error.code);
    return signedIn.value.cookie;
  };
  const who = async (cookie: string, when = now) =>
    (await sessionFrom(records.db, cookie, key, when))?.login;

  test('signs in by user name or email, in any letters', async () => {
    for (const name of ['ana.1', 'ANA.1', ' Ana.1 ', 'bo@company.example', 'BO@company.example']) {
      expect(await from(name, password)).toMatchObject({ ok: true });
    }
  });

  test('a person without email has an address that never receives anything', async () => {
    const row = await records.db
      .selectFrom('login')
      .select('email')
      .where('id', '=', login)
      .executeTakeFirstOrThrow();
    expect(row.email).toMatch(/\.invalid$/);
    expect(hasEmail(row.email)).toBe(false);
  });

  test('a wrong password and a name that nobody has read the same and take as long', async () => {
    const wrong = { ok: false, error: { code: 'NOT_RIGHT' } };
    const timed = async (name: string, tries: number): Promise<readonly number[]> => {
      const times: number[] = [];
      for (let n = 0; n < tries; n += 1) {
        const start = performance.now();
        expect(await from(name, 'wrong password', now, `198.51.100.${n}`)).toEqual(wrong);
        times.push(performance.now() - start);
      }
      return times.toSorted((a, b) => a - b);
    };
    const [known, unknown] = [await timed('ana.1', 5), await timed('nobody', 5)];
    // Either hashes a password, which takes a hundred times as long as not to.
    expect(known[0]! / unknown[0]!).toBeGreaterThan(0.2);
    expect(known[0]! / unknown[0]!).toBeLessThan(5);
    expect(await from('x', 'wrong password')).toEqual(wrong);
    expect(await from('no such@name', 'wrong password')).toEqual(wrong);
    expect(await from('', 'wrong password')).toEqual(wrong);
  });

  test('ten tries at one name are enough, whether anybody has it or not', async () => {
    for (const name of ['bo@company.example', 'nobody.else']) {
      for (let n = 0; n < 10; n += 1) await from(name, 'wrong', now, `203.0.113.${n}`);
      const more = await from(name, password, later(1), '203.0.113.99');
      expect(more).toEqual({ ok: false, error: { code: 'TOO_OFTEN', seconds: 14 * 60 } });
    }
    expect(await from('bo@company.example', password, later(16))).toMatchObject({ ok: true });
  });

  test('a clock set back locks nobody out for longer', async () => {
    for (let n = 0; n < 11; n += 1) await from('clock', 'wrong', later(60 * 24), `192.0.2.${n}`);
    const back = await from('clock', 'wrong', later(0), '192.0.2.200');
    expect(back).toEqual({ ok: false, error: { code: 'NOT_RIGHT' } });
  });

  test('a session is known by its cookie alone, and a forged one is none', async () => {
    const cookie = await cookieOf('ana.1');
    expect(await who(cookie)).toBe(login);
    expect(await who(`${cookie.slice(0, -4)}AAA=`)).toBeUndefined();
    expect(await who(`x${cookie}`)).toBeUndefined();
    expect(tokenFrom('', key)).toBeUndefined();
    expect(tokenFrom('.', key)).toBeUndefined();
    expect(await who(cookie, later(60 * 24 * 91))).toBeUndefined();
  });

  test('a session that is ended is over at once', async () => {
    const [here, there] = [await cookieOf('ana.1'), await cookieOf('ana.1')];
    const open = await sessionFrom(records.db, here, key, now);
    const other = await sessionFrom(records.db, there, key, now);
    await end(records.db, 'somebody else', other!.id);
    expect(await who(there)).toBe(login);
    await end(records.db, login, other!.id);
    expect(await who(there)).toBeUndefined();
    await cookieOf('ana.1');
    await endOthers(records.db, login, open!.id);
    expect((await sessions(records.db, login)).map(({ id }) => id)).toEqual([open!.id]);
    expect(await who(here)).toBe(login);
  });

  test('a session can be made to last from now', async () => {
    const cookie = await cookieOf('ana.1');
    const old = new Date(now.getTime() - 3 * 24 * 60 * 60_000);
    const { id } = (await sessionFrom(records.db, cookie, key, now))!;
    const instant = kind === 'sqlite' ? old.toISOString() : old;
    await records.db
      .updateTable('session')
      .set({ updatedAt: instant, expiresAt: later(60 * 24 * 80).toISOString() })
      .where('id', '=', id)
      .execute();
    expect(await renewed(auth, cookie)).toMatchObject({ cookie, seconds: 90 * 24 * 60 * 60 });
    expect((await sessionFrom(records.db, cookie, key, now))!.renewed.getTime()).toBeGreaterThan(
      old.getTime(),
    );
  });

  test('a password is changed by who knows the present one', async () => {
    const next = 'nine red wheels';
    expect(await changePassword(auth, login, { present: 'wrong', next })).toMatchObject({
      ok: false,
    });
    expect(await changePassword(auth, login, { present: password, next })).toMatchObject({
      ok: true,
    });
    expect(await from('ana.1', password)).toMatchObject({ ok: false });
    expect(await from('ana.1', next)).toMatchObject({ ok: true });
  });

  test('a name that is taken is not made twice', async () => {
    expect(await create(auth, { name: 'C', password, username: 'ana.1' })).toEqual({
      ok: false,
      error: 'NAME_TAKEN',
    });
    expect(await create(auth, { name: 'C', password, email: 'bo@company.example' })).toEqual({
      ok: false,
      error: 'NAME_TAKEN',
    });
  });
});
