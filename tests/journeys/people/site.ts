import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base } from '@playwright/test';

/** A server with records of its own, and the code that it shows to whoever started it. */
export type OwnSite = { readonly address: string; readonly setUpCode: () => Promise<string> };

/** What a server says until it says what is looked for; the part in brackets. */
const saying = (server: ChildProcess, form: RegExp) =>
  new Promise<string>((resolve, reject) => {
    server.stdout?.on('data', (chunk: Buffer) => {
      const found = form.exec(chunk.toString())?.[1];
      if (found) resolve(found);
    });
    server.on('close', () => reject(new Error('The server has ended.')));
  });

export const test = base.extend<{ readonly site: OwnSite }>({
  // Nothing is needed for it, which is said by an empty pattern.

  site: async ({}, use) => {
    const data = mkdtempSync(join(tmpdir(), 'underlap-people-'));
    const server = spawn(process.execPath, ['src/server/serve.ts'], {
      env: { ...process.env, PORT: '0', HOST: '127.0.0.1', DATA_DIR: data },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const address = await saying(server, /(http:\S+)/);
    await use({
      address,
      setUpCode: async () => {
        const code = saying(server, /the code is (\S+)/);
        await fetch(`${address}/start`);
        return code;
      },
    });
    const ended = new Promise((resolve) => server.on('close', resolve));
    server.kill('SIGTERM');
    await ended;
    rmSync(data, { recursive: true, force: true });
  },
});
