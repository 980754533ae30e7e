import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { may } from '#server/access/rights.ts';
import { roles } from '#server/access/roles.ts';
import { scopesFrom, scopesText } from '#server/api/scopes.ts';
import { freshToken, tokenDigest, tokenIn } from '#server/api/token-secret.ts';
import * as tokens from '#server/api/tokens.ts';
import { verify } from '#server/audit/audit-trail.ts';
import { freshId } from '#server/fresh-id.ts';
import { exportPerson } from '#server/people/export.ts';
import type { Act } from '#server/people/member.ts';
import * as people from '#server/people/people.ts';
import { actOf, added, at, deeds, freshCompany } from '../people/company.ts';
import { allText } from '../people/staff.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const asked = () => ({
  id: freshId(),
  label: 'Planning sheet',
  scopes: ['board.read', 'people.read'],
  days: '30',
});
const later = (days: number) => new Date(Date.parse(at) + days * 86_400_000).toISOString();

describe('a token', () => {
  test('is 256 random bits behind a beginning that tells what it is', () => {
    const many = new Set(Array.from({ length: 100 }, freshToken));
    expect(many.size).toBe(100);
    for (const token of many) {
      expect(Buffer.from(token.replace('underlap_', ''), 'base64url')).toHaveLength(32);
      expect(tokenIn(`Bearer ${token}`)).toBe(token);
    }
  });

  test('is found in a header of the right form alone', () => {
    const token = freshToken();
    expect(tokenIn(`bearer  ${token}`)).toBe(token);
    for (const header of [
      undefined,
      null,
      '',
      token,
      `Basic ${token}`,
      `Bearer ${token}x`,
      `Bearer ${token} ${token}`,
      'Bearer underlap_short',
      `Bearer ${token.slice(1)}`,
    ]) {
      expect(tokenIn(header)).toBeUndefined();
    }
  });

  test('is good for what is on the list, whatever else was kept', () => {
    expect(scopesText(['people.read', 'board.read'])).toBe('people.read board.read');
    expect(scopesFrom('board.read all people.read')).toEqual(['people.read', 'board.read']);
    expect(scopesFrom('')).toEqual([]);
  });

  test('is made by the office alone', () => {
    expect(roles.filter((role) => may([role], 'make tokens'))).toEqual(['office']);
  });
});

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  beforeEach(async () => {
    act = await freshCompany(records.db);
  });
  afterAll(() => records.drop());

  const made = async (change: Partial<tokens.GivenToken> = {}, by = act) => {
    const done = await tokens.make(records.db, by, { ...asked(), ...change });
    if (!done.ok) throw new Error(done.error);
    return done.value;
  };

  test('is shown once, kept as a digest, and stands in the audit trail', async () => {
    const { db } = records;
    const given = asked();
    const token = await made(given);
    const [row] = await tokens.list(db, act.by.company, at);
    expect(row).toEqual({
      id: given.id,
      label: 'Planning sheet',
      scopes: ['people.read', 'board.read'],
      state: 'good',
      madeAt: at,
      madeBy: 'Office',
      hasMakerLeft: false,
      expiresAt: later(30),
      revokedAt: null,
      lastUsedOn: null,
    });
    expect(await allText(records)).not.toContain(token);
    expect(await allText(records)).toContain(tokenDigest(token));
    expect(await deeds(db, act.by.company, given.id)).toEqual(['make token']);
    expect((await verify(db, act.by.company)).faults).toEqual([]);
    // Sent twice, as by a page that is loaded again.
    expect(await tokens.make(db, act, given)).toEqual({ ok: false, error: 'MADE_BEFORE' });
    expect(await tokens.list(db, act.by.company, at)).toHaveLength(1);
  });

  test.each([
    [{ label: '  ' }, 'LABEL_WRONG'],
    [{ label: 'x'.repeat(81) }, 'LABEL_WRONG'],
    [{ scopes: [] }, 'SCOPES_WRONG'],
    [{ scopes: ['everything'] }, 'SCOPES_WRONG'],
    [{ days: '366' }, 'DAYS_WRONG'],
    [{ days: '' }, 'DAYS_WRONG'],
    [{ id: 'none' }, 'ABSENT'],
  ] as const)('%j is refused as %s', async (change, error) => {
    expect(await tokens.make(records.db, act, { ...asked(), ...change })).toEqual({
      ok: false,
      error,
    });
    expect(await tokens.list(records.db, act.by.company, at)).toEqual([]);
  });

  test('opens its own company until it runs out', async () => {
    const { db } = records;
    const token = await made();
    const bearer = await tokens.bearerOf(db, token, later(29));
    expect(bearer).toMatchObject({
      ok: true,
      value: { company: act.by.company, scopes: ['people.read', 'board.read'] },
    });
    const [row] = await tokens.list(db, act.by.company, later(29));
    expect(row!.lastUsedOn).toBe(later(29).slice(0, 10));
    expect(await tokens.bearerOf(db, token, later(30))).toEqual({
      ok: false,
      error: 'TOKEN_EXPIRED',
    });
    expect((await tokens.list(db, act.by.company, later(30)))[0]!.state).toBe('expired');
    expect(await tokens.bearerOf(db, freshToken(), at)).toEqual({
      ok: false,
      error: 'UNKNOWN_TOKEN',
    });
  });

  test('opens nothing once it is revoked, and only its own company revokes it', async () => {
    const { db } = records;
    const given = asked();
    const token = await made(given);
    const other = await freshCompany(db);
    expect(await tokens.revoke(db, other, given.id)).toEqual({ ok: false, error: 'ABSENT' });
    expect((await tokens.bearerOf(db, token, at)).ok).toBe(true);
    expect(await tokens.revoke(db, act, given.id)).toEqual({ ok: true, value: true });
    expect(await tokens.bearerOf(db, token, at)).toEqual({ ok: false, error: 'TOKEN_REVOKED' });
    expect(await tokens.revoke(db, act, given.id)).toEqual({ ok: false, error: 'ABSENT' });
    expect(await deeds(db, act.by.company, given.id)).toEqual(['make token', 'revoke token']);
    expect(await tokens.list(db, other.by.company, at)).toEqual([]);
  });

  test('no more than twenty are good at once', async () => {
    const { db } = records;
    const first = asked();
    await made(first);
    for (let more = 1; more < tokens.mostAtOnce; more += 1) await made();
    expect(await tokens.make(db, act, asked())).toEqual({ ok: false, error: 'TOO_MANY' });
    await tokens.revoke(db, act, first.id);
    await made();
    // Those that ran out count no more.
    const afterwards = { ...act, at: later(31) };
    expect((await tokens.make(db, afterwards, asked())).ok).toBe(true);
  });

  test('the list says whose maker has left, and a person takes along what they made', async () => {
    const { db } = records;
    const { company } = act.by;
    const second = await added(db, act, { name: 'Second office', roles: ['office'] });
    const given = asked();
    await made(given, actOf(company, second));
    expect(await people.leave(db, act, second)).toMatchObject({ ok: true });
    expect(await tokens.list(db, company, at)).toMatchObject([
      { madeBy: 'Second office', hasMakerLeft: true, state: 'good' },
    ]);
    const taken = await exportPerson(db, company, second);
    expect(taken!.tokens).toMatchObject([{ id: given.id, label: 'Planning sheet' }]);
    expect(JSON.stringify(taken!.tokens)).not.toContain('digest');
  });
});
