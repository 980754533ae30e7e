import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type Auth, openAuth } from '#server/logins/auth.ts';
import { create, sessions, signIn } from '#server/logins/logins.ts';
import * as cards from '#server/people/cards.ts';
import { fresh, join, open } from '#server/people/enter-by-card.ts';
import { type Act, memberships } from '#server/people/member.ts';
import * as people from '#server/people/people.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { actOf, added, deeds, freshCompany } from './company.ts';

const from = { address: '192.0.2.7', agent: 'a phone' };
const day = 24 * 60 * 60 * 1000;
const password = 'three plain words';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let auth: Auth;
  let act: Act;
  let now: Date;
  let names = 0;
  beforeAll(async () => {
    records = await freshRecords(kind);
    auth = await openAuth(records);
  });
  beforeEach(async () => {
    act = await freshCompany(records.db);
    now = new Date(act.at);
    await records.db.deleteFrom('throttle').execute();
  });
  afterAll(() => records.drop());

  const at = () => ({ auth, db: records.db });
  const freshName = () => `ana.${kind}${(names += 1)}`;
  const cardFor = async (person: string, by = act): Promise<cards.CrewCard> => {
    const [card] = await cards.make(records.db, by, [person]);
    if (!card) throw new Error('no card');
    return card;
  };
  const entered = async (secret: string, name = freshName()) => {
    const done = await fresh(at(), secret, { name, password }, from, now);
    if (!done.ok) throw new Error(done.error.code);
    return { ...done.value, name };
  };
  const codeOf = async (secret: string, when = now) => {
    const opened = await open(records.db, secret, from, when);
    return opened.ok ? 'OPEN' : opened.error.code;
  };

  test('a card makes a login, links it and is used up; only a digest of its secret was kept', async () => {
    const { db } = records;
    const person = await added(db, act, { name: 'Ana López' });
    const { secret } = await cardFor(person);
    const { name, company } = await entered(secret);
    expect(company).toBe(act.by.company);
    const login = await db
      .selectFrom('person')
      .select('login_id')
      .where('id', '=', person)
      .executeTakeFirstOrThrow();
    expect(await memberships(db, login.login_id ?? '')).toMatchObject([{ person, company }]);
    expect((await signIn(at(), { name, password }, from, now)).ok).toBe(true);
    expect(await codeOf(secret)).toBe('INVALID');
    const kept = await db.selectFrom('crew_card').selectAll().execute();
    expect(JSON.stringify(kept)).not.toContain(secret);
    expect(JSON.stringify(kept)).not.toContain(secret.replaceAll('-', ''));
    expect(await deeds(db, company, person)).toEqual([
      'add person',
      'make crew card',
      'use crew card',
    ]);
  });

  test('a secret has 128 bits, and is read as it is typed', async () => {
    const person = await added(records.db, act, { name: 'Ana' });
    const { secret } = await cardFor(person);
    expect(secret.replaceAll('-', '')).toMatch(/^[a-z2-7]{26}$/);
    expect(await codeOf(` ${secret.toUpperCase().replaceAll('-', ' ')}`)).toBe('OPEN');
    const other = await cardFor(person);
    expect(other.secret).not.toBe(secret);
  });

  test('a wrong, expired, revoked or replaced card, and one of who has left, all answer the same', async () => {
    const { db } = records;
    const person = await added(db, act, { name: 'Ana' });
    const first = await cardFor(person);
    const second = await cardFor(person);
    expect(await codeOf(first.secret)).toBe('INVALID');
    expect(await codeOf(second.secret)).toBe('OPEN');
    expect(await codeOf(second.secret, new Date(now.getTime() + 14 * day - 1))).toBe('OPEN');
    expect(await codeOf(second.secret, new Date(now.getTime() + 14 * day))).toBe('INVALID');
    expect(await cards.revoke(db, act, person)).toMatchObject({ ok: true });
    expect(await codeOf(second.secret)).toBe('INVALID');
    expect(await cards.revoke(db, act, person)).toMatchObject({ ok: false });
    const third = await cardFor(person);
    await people.leave(db, act, person);
    await people.comeBack(db, act, person);
    const given = { name: freshName(), password };
    for (const secret of ['', 'abc', third.secret]) {
      for (const way of [fresh, join]) {
        expect(await way(at(), secret, given, from, now)).toEqual({
          ok: false,
          error: { code: 'INVALID' },
        });
      }
    }
  });

  test('a card opened twice at once lets in one', async () => {
    const person = await added(records.db, act, { name: 'Ana' });
    const { secret } = await cardFor(person);
    const given = [freshName(), freshName(), freshName()];
    const done = await Promise.all(
      given.map((name) => fresh(at(), secret, { name, password }, from, now)),
    );
    expect(done.filter(({ ok }) => ok)).toHaveLength(1);
    // Those who came too late left no login behind: their names are free.
    const lost = given.filter((_, index) => !done[index]?.ok);
    for (const username of lost) {
      expect((await create(auth, { name: 'Eva', password, username })).ok).toBe(true);
    }
  });

  test('a name that is taken or unfit, and a short password, leave the card as it was', async () => {
    const { db } = records;
    const person = await added(db, act, { name: 'Ana' });
    const taken = freshName();
    await create(auth, { name: 'Eva', password, username: taken });
    const { secret } = await cardFor(person);
    const attempt = async (name: string, word = password) => {
      const done = await fresh(at(), secret, { name, password: word }, from, now);
      return done.ok ? 'IN' : done.error.code;
    };
    expect(await attempt(taken.toUpperCase())).toBe('NAME_TAKEN');
    expect(await attempt('a b')).toBe('NAME_WRONG');
    expect(await attempt(freshName(), 'short')).toBe('PASSWORD_SHORT');
    expect(await attempt(`${freshName()}@site.example`)).toBe('IN');
  });

  test('a card for who has a login sets a new password and ends every other session', async () => {
    const { db } = records;
    const person = await added(db, act, { name: 'Ana' });
    const { name } = await entered((await cardFor(person)).secret);
    for (let tried = 0; tried < 12; tried += 1) {
      await signIn(at(), { name, password: 'forgotten it' }, from, now);
    }
    const { secret } = await cardFor(person);
    const opened = await open(db, secret, from, now);
    expect(opened).toMatchObject({ value: { knownAs: name } });
    const next = 'four other plain words';
    const done = await fresh(at(), secret, { name: 'ignored', password: next }, from, now);
    expect(done.ok).toBe(true);
    const login = opened.ok ? (opened.value.login ?? '') : '';
    expect(await sessions(db, login)).toHaveLength(1);
    expect((await signIn(at(), { name, password }, from, now)).ok).toBe(false);
    expect((await signIn(at(), { name, password: next }, from, now)).ok).toBe(true);
  });

  test('somebody of two companies joins both with one login, and neither can reset it alone', async () => {
    const { db } = records;
    const person = await added(db, act, { name: 'Ana' });
    const { name } = await entered((await cardFor(person)).secret);
    const elsewhere = await freshCompany(db);
    const there = await added(db, elsewhere, { name: 'Ana L.' });
    const card = await cardFor(there, elsewhere);
    const wrong = await join(at(), card.secret, { name, password: 'not it at all' }, from, now);
    expect(wrong).toMatchObject({ ok: false, error: { code: 'NOT_RIGHT' } });
    expect((await join(at(), card.secret, { name, password }, from, now)).ok).toBe(true);

    const { secret } = await cardFor(there, elsewhere);
    expect(await open(db, secret, from, now)).toMatchObject({ value: { knownAs: null } });
    await entered(secret);
    const login = await db
      .selectFrom('person')
      .select('login_id')
      .where('id', '=', person)
      .executeTakeFirstOrThrow();
    expect(await memberships(db, login.login_id ?? '')).toMatchObject([{ person }]);
    expect((await signIn(at(), { name, password }, from, now)).ok).toBe(true);
  });

  test('one login is one person of a company', async () => {
    const { db } = records;
    const person = await added(db, act, { name: 'Ana' });
    const { name } = await entered((await cardFor(person)).secret);
    const other = await added(db, act, { name: 'Eva' });
    const { secret } = await cardFor(other);
    const done = await join(at(), secret, { name, password }, from, now);
    expect(done).toMatchObject({ ok: false, error: { code: 'ALREADY_HERE' } });
    expect(await codeOf(secret)).toBe('OPEN');
  });

  test('a trainer makes cards for apprentices alone, and nobody for another company', async () => {
    const { db } = records;
    const trainer = actOf(act.by.company, act.by.person, ['trainer']);
    const apprentice = await added(db, act, { name: 'Ana' });
    const examiner = await added(db, act, { name: 'Eva', roles: ['apprentice', 'examiner'] });
    const all = [apprentice, examiner, act.by.person];
    const made = await cards.make(db, trainer, all);
    expect(made.map(({ person }) => person)).toEqual([apprentice]);
    expect(await cards.make(db, act, all)).toHaveLength(3);
    expect(await cards.revoke(db, trainer, examiner)).toMatchObject({ ok: false });
    const stranger = await freshCompany(db);
    expect(await cards.make(db, stranger, all)).toEqual([]);
    expect(await cards.revoke(db, stranger, apprentice)).toMatchObject({ ok: false });
    expect(await cards.openUntil(db, act.by.company, apprentice, act.at)).toBeDefined();
    expect(await cards.openUntil(db, stranger.by.company, apprentice, act.at)).toBeUndefined();
  });

  test('too many cards opened from one address must wait, right ones and wrong ones', async () => {
    const person = await added(records.db, act, { name: 'Ana' });
    const { secret } = await cardFor(person);
    for (let tried = 0; tried < 300; tried += 1) await codeOf('wrong');
    expect(await codeOf(secret)).toBe('TOO_OFTEN');
    expect(await codeOf(secret, new Date(now.getTime() + 16 * 60 * 1000))).toBe('OPEN');
  });
});
