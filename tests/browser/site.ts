import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A server of a built app that runs until it is stopped. */
export type Site = {
  readonly address: string;
  readonly port: number;
  readonly stop: () => Promise<void>;
};

const root = join(import.meta.dirname, '../..');

const addressOf = (server: ChildProcess): Promise<string> =>
  new Promise((resolve, reject) => {
    let said = '';
    server.stderr?.on('data', (chunk: Buffer) => (said += chunk.toString()));
    server.stdout?.on('data', (chunk: Buffer) => {
      const found = /http:\S+/.exec(chunk.toString());
      if (found) resolve(found[0]);
    });
    server.on('close', () => reject(new Error(`The server has ended. ${said}`)));
  });

/** Serves what was built in a folder, on a port of its own unless one is named. */
export async function serve(
  folder = root,
  wanted = 0,
  settings: Readonly<Record<string, string>> = {},
): Promise<Site> {
  const data = mkdtempSync(join(tmpdir(), 'underlap-site-'));
  const server = spawn(process.execPath, [join(folder, 'src/server/serve.ts')], {
    cwd: folder,
    env: {
      ...process.env,
      PORT: String(wanted),
      HOST: '127.0.0.1',
      DATA_DIR: data,
      ...settings,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const address = await addressOf(server);
  const ended = new Promise<void>((resolve) => server.on('close', () => resolve()));
  return {
    address,
    port: Number(new URL(address).port),
    stop: async () => {
      server.kill('SIGKILL');
      await ended;
      rmSync(data, { recursive: true, force: true });
    },
  };
}
