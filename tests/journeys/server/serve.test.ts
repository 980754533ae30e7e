import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';

const serve = (env: Readonly<Record<string, string>>): ChildProcess =>
  spawn(process.execPath, ['src/server/serve.ts'], {
    env: { ...process.env, DATA_DIR: mkdtempSync(join(tmpdir(), 'underlap-serve-')), ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });

const ended = (child: ChildProcess) =>
  new Promise<{ readonly code: number | null; readonly stderr: string }>((resolve) => {
    let stderr = '';
    child.stderr?.on('data', (chunk: Buffer) => (stderr += chunk.toString()));
    child.on('close', (code) => resolve({ code, stderr }));
  });

const addressOf = (child: ChildProcess) =>
  new Promise<string>((resolve) => {
    child.stdout?.on('data', (chunk: Buffer) => {
      const found = /http:\S+/.exec(chunk.toString());
      if (found) resolve(found[0]);
    });
  });

test('a taken port is told with the way to another', async () => {
  const taken = process.env['JOURNEY_PORT'] ?? '';
  const { code, stderr } = await ended(serve({ PORT: taken }));
  expect(code).toBe(1);
  expect(stderr).toContain(`port ${taken} on 127.0.0.1 is taken`);
  expect(stderr).toContain(`PORT=${Number(taken) + 1} npm start`);
});

for (const [name, value, told] of [
  ['PORT', '80a', 'PORT=80a cannot be used'],
  ['PORT', '70000', 'PORT=70000 cannot be used'],
  ['TRUSTED_PROXIES', '10.0.0.0/8,proxy', '"proxy" is neither an address nor a range'],
] as const) {
  test(`${name}=${value} is refused with the reason`, async () => {
    const { code, stderr } = await ended(serve({ [name]: value }));
    expect(code).toBe(1);
    expect(stderr).toContain(told);
  });
}

test('a told stop ends the server at once when nothing is under way', async () => {
  const child = serve({ PORT: '0' });
  const address = await addressOf(child);
  expect((await fetch(address)).status).toBe(200);
  const end = ended(child);
  child.kill('SIGTERM');
  expect((await end).code).toBe(0);
});

test('a wall is drawn on the server: its section and its name come without any script', async ({
  request,
}) => {
  const page = await (await request.get('/methods/base-of-wall')).text();
  // The drawing's own title and what it says to who cannot see it, then its lines.
  const drawing = /<svg[^>]* aria-labelledby="(\S+) (\S+)".*?<\/svg>/s.exec(page) ?? [];
  const [shown = '', title, says] = drawing;
  expect(shown).toContain(`<title id="${title}">Section</title>`);
  expect(shown).toMatch(new RegExp(`<desc id="${says}">Section: Sheathing; .*Membrane, wall`));
  expect(shown.match(/<path /g)?.length).toBeGreaterThan(10);
});

test('told to, it listens on every address of the machine', async () => {
  const child = serve({ HOST: '0.0.0.0', PORT: '0' });
  const { port } = new URL(await addressOf(child));
  const addresses = Object.values(networkInterfaces())
    .flatMap((found) => found ?? [])
    .filter(({ family }) => family === 'IPv4')
    .map(({ address }) => address);
  expect(addresses).toContain('127.0.0.1');
  for (const address of addresses) {
    expect((await fetch(`http://${address}:${port}/`)).status).toBe(200);
  }
  child.kill('SIGTERM');
  await ended(child);
});

for (const address of ['/', '/shell', '/icon.svg', '/en.webmanifest', '/content/current']) {
  test(`${address} is answered with headers that keep it from being misread and framed`, async ({
    request,
  }) => {
    const headers = (await request.get(address)).headers();
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['referrer-policy']).toBe('same-origin');
    expect(headers['content-security-policy']).toContain("frame-ancestors 'none'");
  });
}

test('a page made at build and one made for the request allow no script but their own', async ({
  request,
}) => {
  const shell = await (await request.get('/shell')).text();
  const written = /http-equiv="content-security-policy" content="([^"]+)"/.exec(shell)?.[1] ?? '';
  const sent = (await request.get('/')).headers()['content-security-policy'] ?? '';
  for (const policy of [written, sent]) {
    const scripts = /script-src ([^;]+)/.exec(policy)?.[1] ?? '';
    expect(scripts).toMatch(/^'self' '(sha256|nonce)-/);
    expect(scripts).not.toContain('unsafe');
  }
});
