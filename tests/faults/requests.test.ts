import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { migrate, openDatabase } from '#server/database/open-database.ts';
import { type Server, startServer } from './server-process.ts';
import { type Company, makeCrew, post, signedInCompany, submission } from './signed-in.ts';

const folder = mkdtempSync(join(tmpdir(), 'underlap-requests-'));
let company: Company;
let server: Server;

beforeAll(async () => {
  const records = openDatabase({ folder });
  await migrate(records);
  company = await signedInCompany(records, 1);
  await records.close();
  server = await startServer({ folder }, { folder });
}, 60_000);
afterAll(() => server?.kill());

const send = (path: string, init: RequestInit & { readonly type?: string }) =>
  fetch(`${server.address}${path}`, {
    method: 'POST',
    redirect: 'manual',
    ...init,
    headers: {
      origin: server.address,
      cookie: company.office.cookie,
      ...(init.type ? { 'content-type': init.type } : {}),
      ...(init.headers as Record<string, string>),
    },
  });
const attempts = () => `/company/${company.company}/attempts`;
const asJson = { type: 'application/json', headers: { accept: 'application/json' } };
const asForm = { type: 'application/x-www-form-urlencoded', headers: { accept: 'text/html' } };

describe('what may be sent', () => {
  test('more than an address takes is refused with 413, as JSON or as a page', async () => {
    const form = await send('/sign-in', { ...asForm, body: `name=${'a'.repeat(70_000)}` });
    expect(form.status).toBe(413);
    expect(form.headers.get('content-type')).toContain('text/html');
    expect(await form.text()).toContain('Send it in smaller parts.');
    const json = await send(attempts(), { ...asJson, body: `[${' '.repeat(2 * 1024 * 1024)}]` });
    expect(json.status).toBe(413);
    expect(await json.json()).toMatchObject({ code: 'TOO_LARGE' });
    expect((await send(attempts(), { ...asJson, body: ' '.repeat(1_500_000) })).status).toBe(400);
  });

  test('a body that does not say its length is refused once it is too long', async () => {
    const part = new TextEncoder().encode(' '.repeat(64 * 1024));
    let sent = 0;
    const body = new ReadableStream<Uint8Array>({
      pull: (controller) => {
        sent += 1;
        if (sent > 64) controller.close();
        else controller.enqueue(part);
      },
    });
    const init = { ...asJson, body, duplex: 'half' } as RequestInit & { type: string };
    const status = await send(attempts(), init).then(
      (answer) => answer.status,
      () => 'cut off',
    );
    expect([413, 'cut off']).toContain(status);
    expect((await fetch(`${server.address}/health`)).status).toBe(200);
  });

  test('what is too deep, no JSON or of another type is told with its place and cure', async () => {
    const deep = await send(attempts(), { ...asJson, body: '['.repeat(41) + ']'.repeat(41) });
    expect([deep.status, await deep.json()]).toMatchObject([400, { code: 'TOO_DEEP' }]);
    const broken = await send(attempts(), { ...asJson, body: '{"attempts": [1,\n 2' });
    expect([broken.status, await broken.json()]).toMatchObject([
      400,
      { code: 'NOT_JSON', line: 2, column: 3 },
    ]);
    const typed = await send(attempts(), { ...asJson, type: 'text/csv', body: '{}' });
    expect(typed.status).toBe(415);
  });

  test('a script for a name is refused, and stands as plain text in the answer', async () => {
    const script = '<script>alert(1)</script>';
    const made = await makeCrew(server.address, company, script);
    expect(((await made.json()) as { type: string }).type).toBe('failure');
    const page = await send(`/company/${company.company}/crews?/create`, {
      ...asForm,
      body: new URLSearchParams({ name: script }).toString(),
    });
    const html = await page.text();
    expect(html).not.toContain(script);
    const name = "O'Neil & Sons";
    expect((await (await makeCrew(server.address, company, name)).json()) as object).toMatchObject({
      type: 'success',
    });
    const list = await send(`/company/${company.company}/crews`, {
      method: 'GET',
      headers: { accept: 'text/html' },
    });
    expect(await list.text()).toContain('O&#39;Neil &amp; Sons'.replace('&#39;', "'"));
  });
});

test('a stream of requests leaves no name, email, password or search text in the log', async () => {
  const words = [
    'Zacarias',
    'zacarias@example.test',
    'hunter-two-hunter',
    'quetzalcoatl',
    'B-4711',
  ];
  const [name = '', email = '', password = '', search = '', number = ''] = words;
  const { cookie } = company.apprentices[0]!;
  for (let n = 0; n < 5; n += 1) {
    await send(`/search?q=${search}`, { method: 'GET' });
    await send(`/company/${company.company}/people?q=${name}`, { method: 'GET' });
    await send(`/company/${company.company}/people?/create`, {
      ...asForm,
      body: new URLSearchParams({ name, email, number, roles: 'apprentice' }).toString(),
    });
    await send(`/sign-in?to=/${search}`, {
      ...asForm,
      body: new URLSearchParams({ name: email, password }).toString(),
    });
    await send(`/${name}/${search}`, { method: 'GET' });
    await send(attempts(), { ...asJson, body: `{"attempts": ${name}}` });
    await post(server.address, { company: company.company, cookie }, [
      { ...submission(n), note: name },
      { kind: 'takeoff', kept: name },
    ]);
  }
  const log = server.log();
  const lines = log.split('\n').filter((line) => line.startsWith('{'));
  const requests = lines
    .map((line) => JSON.parse(line) as Record<string, unknown>)
    .filter(({ event }) => event === 'request');
  expect(requests.length).toBeGreaterThanOrEqual(35);
  for (const request of requests) {
    expect(Object.keys(request).sort()).toEqual(
      ['at', 'event', 'level', 'method', 'milliseconds', 'route', 'status'].sort(),
    );
  }
  expect(requests.map(({ route }) => route)).toContain('/company/[company]/people');
  const personal = [company.company, company.office.person, company.office.email, 'Olga'];
  const secret = company.office.cookie.split('=')[1]!;
  for (const word of [...words, ...personal, secret]) expect(log).not.toContain(word);
});
