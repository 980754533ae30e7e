import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import type { Place } from '#server/database/open-database.ts';

const root = join(import.meta.dirname, '../..');

/** A server of the build, in a process of its own that can be killed at any moment. */
export type Server = {
  readonly address: string;
  readonly pid: number;
  /** From its start until it listens. */
  readonly milliseconds: number;
  /** What it has said so far. */
  readonly log: () => string;
  /** Ends it as a power cut would: nothing in it gets to know. */
  readonly kill: () => Promise<void>;
};

type How = {
  /** For what stands beside the records. */
  readonly folder: string;
  /** Options of node, before the script. */
  readonly node?: readonly string[];
  /** A program that starts it, with its arguments; `$@` is the server. */
  readonly through?: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
};

const listening = (child: ChildProcess, said: () => string): Promise<string> =>
  new Promise((resolve, reject) => {
    child.stdout?.on('data', () => {
      const found = /Underlap is at (http:\S+)/.exec(said());
      if (found) resolve(found[1]!);
    });
    child.on('close', () => reject(new Error(`The server has ended. ${said()}`)));
  });

export async function startServer(
  place: Place,
  { folder, node = [], through = [], env = {} }: How,
): Promise<Server> {
  const start = performance.now();
  const { DATABASE_URL: _, ...outer } = process.env;
  const [program, ...args] = [...through, process.execPath, ...node, 'src/server/serve.ts'];
  const child = spawn(program, args, {
    cwd: root,
    env: {
      ...outer,
      PORT: '0',
      HOST: '127.0.0.1',
      DATA_DIR: folder,
      ...('url' in place ? { DATABASE_URL: place.url } : {}),
      ...env,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.setEncoding('utf8').on('data', (text: string) => (said += text));
  }
  const ended = new Promise<void>((resolve) => child.on('close', () => resolve()));
  const address = await listening(child, () => said);
  return {
    address,
    pid: child.pid!,
    milliseconds: Math.round(performance.now() - start),
    log: () => said,
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
  };
}
