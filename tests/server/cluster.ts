/**
 * A PostgreSQL server of the tests' own, in a folder that is thrown away, on a socket that nobody else
 * reaches. It does not run as root, so where the tests do, it runs as whoever may not do anything.
 */
import { execFileSync } from 'node:child_process';
import { chownSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { postgresProgram } from '../../src/setup/postgres.js';

export type Cluster = {
  /** The address of a database on it. */
  readonly urlOf: (database: string) => string;
  readonly restart: () => void;
  readonly stop: () => void;
};

type Identity = { readonly uid: number; readonly gid: number };

/** Debian's account for the server, or the one that owns nothing. */
function identity(): Identity | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const accounts = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .map((line) => line.split(':'));
  const account = ['postgres', 'nobody']
    .map((name) => accounts.find(([known]) => known === name))
    .find(Boolean);
  if (!account) throw new Error('PostgreSQL does not run as root, and there is nobody else.');
  return { uid: Number(account[2]), gid: Number(account[3]) };
}

const program = (name: string): string => {
  const file = postgresProgram(name);
  if (!file) throw new Error(`There is no ${name}. On Debian: apt-get install postgresql`);
  return file;
};

/** What need not outlive a cut of the power need not wait for the disk. */
const careless = '-c fsync=off -c synchronous_commit=off -c full_page_writes=off';

const options = (folder: string): string =>
  `-c listen_addresses='' -c unix_socket_directories='${folder}' -c max_connections=200`;

type How = {
  /** As in use: an answered write must survive a kill. */
  readonly durable: boolean;
};

export function startCluster({ durable }: How = { durable: true }): Cluster {
  const folder = mkdtempSync(join(tmpdir(), 'underlap-pg-'));
  const data = join(folder, 'data');
  const how = durable ? options(folder) : `${options(folder)} ${careless}`;
  const who = identity();
  if (who) chownSync(folder, who.uid, who.gid);
  const run = (name: string, args: readonly string[]) =>
    execFileSync(program(name), args, { ...who, cwd: folder, stdio: ['ignore', 'ignore', 'pipe'] });
  const control = (...args: string[]) =>
    run('pg_ctl', ['-D', data, '-l', join(folder, 'log'), '-o', how, '-w', ...args]);

  run('initdb', ['-D', data, '-U', 'underlap', '-A', 'trust', '-E', 'UTF8', '--locale=C', '-N']);
  control('start');
  return {
    urlOf: (database) => `postgres://underlap@localhost/${database}?host=${folder}`,
    restart: () => control('restart', '-m', 'immediate'),
    stop: () => {
      control('stop', '-m', 'immediate');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
