/** PostgreSQL's own programs, run on the database of an address. */
import { spawn } from 'node:child_process';
import { OperationTrouble } from './trouble.ts';

/** The address without its password, which goes by the environment: others can read a command line. */
export function connectionOf(url: string): {
  readonly address: string;
  readonly env: Readonly<Record<string, string>>;
} {
  const address = new URL(url);
  const word = address.password || (address.searchParams.get('password') ?? '');
  address.password = '';
  address.searchParams.delete('password');
  return {
    address: address.href,
    env: word === '' ? {} : { PGPASSWORD: decodeURIComponent(word) },
  };
}

const programs = {
  pg_dump: 'writes backups of PostgreSQL',
  pg_restore: 'reads backups of PostgreSQL',
  psql: 'puts them back',
} as const;

/** Runs a program to its end, each line that it writes handed over. Throws an OperationTrouble. */
export function runProgram(
  name: keyof typeof programs,
  args: readonly string[],
  { env = {}, line }: { env?: Readonly<Record<string, string>>; line?: (text: string) => void },
): Promise<void> {
  return new Promise((resolve, reject) => {
    const child = spawn(name, args, {
      env: { ...process.env, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let said = '';
    let rest = '';
    child.stderr.setEncoding('utf8').on('data', (text: string) => (said += text));
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      if (!line) return;
      const lines = (rest + text).split('\n');
      rest = lines.pop() ?? '';
      lines.forEach(line);
    });
    child.on('error', (error: NodeJS.ErrnoException) =>
      reject(
        error.code === 'ENOENT'
          ? new OperationTrouble(
              `There is no ${name} on this machine's path, which ${programs[name]}. ` +
                'Install its client programs (on Debian: apt-get install postgresql-client).',
            )
          : error,
      ),
    );
    child.on('close', (code) =>
      code === 0 ? resolve() : reject(new OperationTrouble(`${name} failed. ${said.trim()}`)),
    );
  });
}
