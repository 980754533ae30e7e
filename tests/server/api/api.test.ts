/** Every address of the API, over records of two companies: what it answers is what its document says. */
import { Validator } from '@seriousme/openapi-schema-validator';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import formats, { type FormatsPlugin } from 'ajv-formats';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { doors } from '#server/access/doors.ts';
import { openAllowance, perToken } from '#server/api/allowance.ts';
import { answer } from '#server/api/answer.ts';
import { openApi } from '#server/api/document.ts';
import type { Endpoint } from '#server/api/endpoint.ts';
import { endpoints } from '#server/api/endpoints.ts';
import { type Problem, problemCodes, refused, statusOf } from '#server/api/problem.ts';
import { type Scope, scopes } from '#engine/record/token.ts';
import { throughToken } from '#server/api/token-door.ts';
import * as tokens from '#server/api/tokens.ts';
import { compose } from '#server/assignments/assignments.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Act } from '#server/people/member.ts';
import * as people from '#server/people/people.ts';
import { draft } from '../assignments/given.ts';
import { content, granted } from '../certificates/granted.ts';
import { added, at, freshCompany } from '../people/company.ts';
import { addAttempt } from '../people/staff.ts';
import { apply, crewNamed, practise } from '../board/crewed.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const document = openApi();
const ajv = new Ajv2020({ strict: true, allErrors: true });
(formats as unknown as { readonly default: FormatsPlugin }).default(ajv);
ajv.addSchema({ $id: 'api', ...document });
ajv.addVocabulary(Object.keys(document));

type Operation = {
  readonly operationId: string;
  readonly parameters: readonly { readonly name: string; readonly in: string }[];
  readonly responses: Readonly<Record<string, unknown>>;
};
const paths = document.paths as Readonly<Record<string, Readonly<Record<string, Operation>>>>;
const escaped = (text: string) => text.replaceAll('~', '~0').replaceAll('/', '~1');

function schemaOf(path: string, method: string, status: number): ValidateFunction {
  const at =
    status === 200
      ? `/paths/${escaped(path)}/${method}/responses/200/content/${escaped('application/json')}/schema`
      : '/components/schemas/Problem';
  return ajv.compile({ $ref: `api#${encodeURI(at)}` });
}

const addressOf = ({ route }: Endpoint) => route.replace(/\[(\w+)\]/g, '{$1}');

describe('the document', () => {
  test('is a document of OpenAPI 3.1', async () => {
    const { valid, errors } = await new Validator().validate(structuredClone(document));
    expect(errors ?? []).toEqual([]);
    expect(valid).toBe(true);
  });

  test('the validator refuses one that is not', async () => {
    const broken = structuredClone(document) as { paths: Record<string, unknown> };
    broken.paths['/api/people'] = { get: { parameters: [{ name: 'x' }] } };
    expect((await new Validator().validate(broken)).valid).toBe(false);
  });

  test('names every address for tokens with its scope, and no other', () => {
    const told = endpoints.map(({ route, method, scope }) => [route, method, `token: ${scope}`]);
    const guarded = Object.entries(doors).flatMap(([route, keys]) =>
      Object.entries(keys)
        .filter(([, door]) => door.startsWith('token: '))
        .map(([method, door]) => [route, method, door]),
    );
    expect(told.toSorted()).toEqual(guarded.toSorted());
    expect(endpoints.map(addressOf).every((path) => path in paths)).toBe(true);
    expect(new Set(endpoints.map(({ id }) => id)).size).toBe(endpoints.length);
  });

  test('names every problem under its status', () => {
    const responses = document.components.responses;
    for (const code of problemCodes) {
      expect(responses[String(statusOf(code))]!.description).toContain(code);
    }
  });

  test('every part in the address is a parameter', () => {
    for (const endpoint of endpoints) {
      const operation = paths[addressOf(endpoint)]![endpoint.method.toLowerCase()]!;
      const named = [...endpoint.route.matchAll(/\[(\w+)\]/g)].map(([, name]) => name);
      const inPath = operation.parameters.filter((one) => one.in === 'path');
      expect(inPath.map(({ name }) => name)).toEqual(named);
    }
  });
});

test('an answer that says less or more than the document is told apart', () => {
  const check = schemaOf('/api/crews', 'get', 200);
  const crew = { id: freshId(), name: 'North', people: 3, closedAt: null };
  expect(check({ items: [crew] })).toBe(true);
  expect(check({ items: [{ ...crew, secret: 1 }] })).toBe(false);
  expect(check({ items: [{ ...crew, id: 'no id' }] })).toBe(false);
  expect(check({})).toBe(false);
});

test('every problem has the form of RFC 9457', async () => {
  for (const code of problemCodes) {
    const problem: Problem = { code, scope: 'board.read', seconds: 3, id: 'x', faults: [] };
    const answered = refused(problem);
    const told: unknown = await answered.json();
    const check = schemaOf('', '', answered.status);
    expect(check(told), JSON.stringify(check.errors)).toBe(true);
    expect(answered.headers.get('content-type')).toBe('application/problem+json');
  }
});

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  let other: Act;
  let held: Readonly<Record<'ana' | 'bo' | 'crew' | 'certificate' | 'given', string>>;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());

  /** A company of which every address has something to tell. */
  async function full(by: Act): Promise<typeof held> {
    const { db } = records;
    const crew = await crewNamed(db, by, 'North');
    const ana = await added(db, by, {
      name: 'Ana',
      number: 'B-17',
      crew,
      language: 'es',
      email: 'ana@office.example',
    });
    const bo = await added(db, by, { name: 'Bo' });
    const certificate = await granted(db, by, { person: ana });
    await apply(db, by, bo, 'base-of-wall-installer');
    await practise(db, by, ana, 'base-of-wall', '2030-04-01');
    const given = await compose(db, by, content, draft({ crews: [crew], persons: [bo] }));
    if (!given.ok) throw new Error(JSON.stringify(given.error));
    for (let more = 0; more < 5; more += 1) {
      await addAttempt(records, {
        company: by.by.company,
        office: by.by.person,
        apprentice: more % 2 ? ana : bo,
      });
    }
    return { ana, bo, crew, certificate, given: given.value };
  }
  beforeEach(async () => {
    [act, other] = [await freshCompany(records.db), await freshCompany(records.db)];
    held = await full(act);
  });

  /** Asks as a token of that company would, and holds the answer to the document. */
  async function ask(
    path: string,
    { as = act, good = scopes, now = at }: { as?: Act; good?: readonly Scope[]; now?: string } = {},
  ) {
    const url = new URL(path, 'https://underlap.example');
    const pattern = (route: string) => new RegExp(`^${route.replace(/\[\w+\]/g, '([^/]+)')}$`);
    const found = endpoints.find(({ route }) => pattern(route).test(url.pathname))!;
    const names = [...found.route.matchAll(/\[(\w+)\]/g)].map(([, name]) => name!);
    const parts = pattern(found.route).exec(url.pathname)!.slice(1);
    const response = await answer(found, {
      locals: {
        desk: { database: records },
        bearer: { token: freshId(), company: as.by.company, scopes: good },
        at: now,
      } as unknown as App.Locals,
      params: Object.fromEntries(names.map((name, place) => [name, parts[place]])),
      url,
    });
    const body = (await response.json()) as {
      readonly items: readonly Readonly<Record<string, unknown>>[];
      readonly next: string | null;
      readonly code?: string;
    };
    const check = schemaOf(addressOf(found), 'get', response.status);
    expect(check(body), `${path}: ${JSON.stringify(check.errors)}`).toBe(true);
    const operation = paths[addressOf(found)]!['get']!;
    expect(Object.keys(operation.responses)).toContain(String(response.status));
    return { status: response.status, body };
  }

  const soon = '2030-05-01T08:00:00.000Z';
  const lists = () => [
    '/api/people',
    '/api/crews',
    '/api/certificates',
    '/api/board',
    '/api/assignments',
    `/api/assignments/${held.given}/standings`,
    '/api/attempts',
  ];

  test('every list tells something, in the form of the document', async () => {
    for (const path of lists()) {
      const { status, body } = await ask(path, { now: soon });
      expect([path, status]).toEqual([path, 200]);
      expect(body.items.length, path).toBeGreaterThan(0);
    }
    const one = await ask(`/api/assignments/${held.given}`);
    expect(one.body).toMatchObject({ crews: [held.crew], people: [held.bo] });
  });

  test('nothing of another company is told, whatever of it is named', async () => {
    const told = JSON.stringify(
      await Promise.all(lists().map((path) => ask(path, { as: other, now: soon }))),
    );
    for (const id of Object.values(held)) expect(told).not.toContain(id);
    expect(await ask(`/api/assignments/${held.given}`, { as: other })).toMatchObject({
      status: 404,
      body: { code: 'ABSENT' },
    });
    for (const path of [
      `/api/people?crew=${held.crew}`,
      `/api/board?crew=${held.crew}`,
      `/api/certificates?person=${held.ana}`,
      `/api/attempts?person=${held.ana}`,
    ]) {
      expect((await ask(path, { as: other, now: soon })).body.items, path).toEqual([]);
    }
    for (const list of ['people', 'board', 'attempts', 'assignments']) {
      const after = list === 'assignments' ? held.given : held.ana;
      const { body } = await ask(`/api/${list}?after=${after}`, { as: other });
      expect(body.code, list).toBe('CURSOR_UNKNOWN');
    }
  });

  test('what was seen of people depends on the scopes', async () => {
    const without = await ask('/api/people', { good: ['people.read'] });
    expect(JSON.stringify(without.body)).not.toContain('ana@office.example');
    expect(without.body.items[0]).not.toHaveProperty('email');
    const withThem = await ask('/api/people', { good: ['people.read', 'people.email'] });
    expect(withThem.body.items.find(({ id }) => id === held.ana)).toEqual({
      id: held.ana,
      name: 'Ana',
      number: 'B-17',
      crew: held.crew,
      roles: ['apprentice'],
      language: 'es',
      leftAt: null,
      email: 'ana@office.example',
    });
  });

  test('page after page tells everything once', async () => {
    for (const path of ['/api/people', '/api/board', '/api/attempts', '/api/certificates']) {
      const whole = (await ask(`${path}?most=500`, { now: soon })).body.items;
      const found: unknown[] = [];
      let next: string | null = '';
      while (next !== null) {
        const query = next ? `?most=1&after=${next}` : '?most=1';
        const { body } = await ask(path + query, { now: soon });
        expect(body.items).toHaveLength(1);
        found.push(...body.items);
        ({ next } = body);
      }
      expect(found, path).toEqual(whole);
    }
  });

  test('an attempt is told once it has settled, and a list goes on where it ended', async () => {
    const { body } = await ask('/api/attempts', { now: soon });
    const last = body.items.at(-1)!['id'];
    expect(body.next).toBeNull();
    expect((await ask(`/api/attempts?after=${String(last)}`, { now: soon })).body.items).toEqual(
      [],
    );
    const received = String(body.items.at(-1)!['receivedAt']);
    const late = new Date(Date.parse(received) + 9_999).toISOString();
    expect((await ask('/api/attempts', { now: late })).body.items.length).toBeLessThan(5);
  });

  test('a certificate is told as it stands today', async () => {
    const state = async (now: string) =>
      (await ask('/api/certificates', { now })).body.items[0]!['state'];
    expect(await state(soon)).toBe('current');
    expect(await state('2033-05-02T08:00:00.000Z')).toBe('expired');
    const db = records.db.updateTable('certificate').set({ state: 'suspended' });
    await db.where('id', '=', held.certificate).execute();
    expect(await state(soon)).toBe('suspended');
    const cells = (await ask('/api/board', { now: soon })).body.items.find(
      ({ person }) => person === held.ana,
    )!['standings'];
    expect(cells).toContainEqual({
      qualification: 'base-of-wall-installer',
      state: 'suspended',
      certificate: held.certificate,
      validUntil: '2033-05-01',
      lastPractised: '2030-04-01',
    });
  });

  test.each([
    ['most=0', 'most'],
    ['most=501', 'most'],
    ['most=many', 'most'],
    ['after=1', 'after'],
    ['limit=3', 'limit'],
    ['most=1&most=2', 'most'],
    ['who=all', 'who'],
  ])('?%s is refused, naming it', async (query, name) => {
    const { status, body } = await ask(`/api/people?${query}`);
    expect(status).toBe(422);
    expect(body).toMatchObject({ code: 'PARAMETERS_WRONG', faults: [{ at: name }] });
  });

  test('who has left is among the gone, and no list starts anew after somebody erased', async () => {
    await people.leave(records.db, act, held.bo);
    const ids = async (query: string) =>
      (await ask(`/api/people${query}`)).body.items.map(({ id }) => id);
    expect(await ids('')).not.toContain(held.bo);
    expect(await ids('?who=gone')).toEqual([held.bo]);
    const gone = records.db.updateTable('person').set({ erased_at: at });
    await gone.where('id', '=', held.bo).execute();
    for (const list of ['people', 'board', `assignments/${held.given}/standings`]) {
      expect((await ask(`/api/${list}?after=${held.bo}`)).body.code).toBe('CURSOR_UNKNOWN');
    }
  });

  test('an identifier that cannot be one is not there', async () => {
    expect((await ask('/api/assignments/none')).status).toBe(404);
    expect((await ask(`/api/assignments/${freshId()}`)).status).toBe(404);
  });

  test('a token that asks too often is told how long to wait', async () => {
    const { db } = records;
    const given = { id: freshId(), label: 'Sheet', scopes: ['board.read'], days: '30' };
    const made = await tokens.make(db, act, given);
    if (!made.ok) throw new Error(made.error);
    const allowance = openAllowance();
    const knock = (scope: Scope) =>
      throughToken(
        { db, allowance },
        { authorization: `Bearer ${made.value}`, scope, now: new Date(at) },
      );
    expect((await knock('board.read')).ok).toBe(true);
    // What is refused for its scope counts, too.
    for (let more = 1; more < perToken.most; more += 1) {
      expect(await knock('people.read')).toMatchObject({ error: { code: 'WRONG_SCOPE' } });
    }
    expect(await knock('board.read')).toEqual({
      ok: false,
      error: { code: 'TOO_OFTEN', seconds: perToken.seconds },
    });
  });
});
