import { FaultyContentError } from '#server/content.ts';
import { OperationTrouble } from '#server/operations/trouble.ts';
import { MisuseError, type ExitCode, type Streams } from './command.ts';
import { commands } from './commands.ts';
import { report, tally } from './report.ts';

const start = 'npm run -s underlap --';

const usage = (): string => {
  const lines = [...commands].map(([name, { usage }]) => `  ${name} ${usage}`.trimEnd());
  const width = Math.max(...lines.map((line) => line.length));
  const summaries = [...commands.values()].map(({ summary }) => summary);
  return [
    `usage: ${start} <command>`,
    '',
    ...lines.map((line, index) => `${line.padEnd(width)}  ${summaries[index]}`),
    '',
    'Results go to standard output as JSON. Exit: 0 well, 1 faults found, 2 misuse.',
    '',
  ].join('\n');
};

/** Runs one command as given after the program's name. */
export async function run(argv: readonly string[], streams: Streams): Promise<ExitCode> {
  const [name, ...args] = argv;
  if (name === '--help' || name === 'help') {
    streams.beside(usage());
    return 0;
  }
  const command = commands.get(name ?? '');
  if (!name || !command) {
    streams.beside(name ? `There is no command "${name}".\n\n${usage()}` : usage());
    return 2;
  }
  try {
    return await command.run(args, streams);
  } catch (error) {
    if (error instanceof FaultyContentError) {
      error.diagnostics.forEach((each) => streams.beside(report(each)));
      streams.beside(`The content must be right first. ${tally(error.diagnostics)}`);
      return 1;
    }
    if (error instanceof OperationTrouble) {
      streams.beside(`${error.message}\n`);
      return 1;
    }
    if (!isMisuse(error)) throw error;
    streams.beside(`${error.message}\nusage: ${start} ${name} ${command.usage}\n`);
    return 2;
  }
}

/** Its own, or that of node's parser of arguments. */
const isMisuse = (error: unknown): error is Error =>
  error instanceof MisuseError ||
  (error instanceof TypeError &&
    'code' in error &&
    String(error.code).startsWith('ERR_PARSE_ARGS_'));
